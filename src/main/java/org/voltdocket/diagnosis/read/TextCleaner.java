package org.voltdocket.diagnosis.read;

/** Cleans text that only people read, so that it can be kept and shown anywhere. */
public final class TextCleaner {

    private static final int MOST_NAME = 200;

    private TextCleaner() {}

    /** A file's name without path, control and formatting characters such as direction marks, 1 to {@value #MOST_NAME} characters. */
    public static String fileName(String sent) {
        String text = sent == null ? "" : sent;
        String last = text.substring(Math.max(text.lastIndexOf('/'), text.lastIndexOf('\\')) + 1);
        String clean = printable(last.replaceAll("[\\p{Cf}\\p{Zl}\\p{Zp}]", "")).strip();
        if (clean.isEmpty()) {
            return "unnamed";
        }
        return clean.length() <= MOST_NAME ? clean : clean.substring(clean.length() - MOST_NAME);
    }

    /** A note without control characters but line ends and tabs; null where nothing is left. */
    public static String note(String sent) {
        String clean = sent == null ? "" : lines(sent).strip();
        return clean.isEmpty() ? null : clean;
    }

    /** Text with control characters blanked, but for line ends and tabs. */
    static String lines(String text) {
        return text.replaceAll("[\\p{Cntrl}\\p{Cs}&&[^\\n\\r\\t]]", " ");
    }

    /** Text with control characters and broken surrogates blanked. */
    static String printable(String text) {
        return text.replaceAll("[\\p{Cntrl}\\p{Cs}]", " ");
    }
}
