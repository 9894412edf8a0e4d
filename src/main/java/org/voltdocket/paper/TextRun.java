package org.voltdocket.paper;

/** A stretch of text in one style; a line feed in it breaks the line. */
public record TextRun(String text, TextStyle style) {

    public TextRun {
        text = text == null ? "" : text;
    }
}
