package org.voltdocket.ui;

/** What a CSV file must mind, since most are opened in a spreadsheet. */
public final class SpreadsheetCells {

    /** What makes a spreadsheet take a text for a formula, or leads one in, when it stands first. */
    private static final String LEADS_IN = "=+-@\t\r\n";

    private SpreadsheetCells() {}

    /** The text, with an apostrophe before it where a spreadsheet would take it for a formula; null stays null. */
    public static String harmless(String text) {
        return text != null && !text.isEmpty() && LEADS_IN.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
