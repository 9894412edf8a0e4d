package org.voltdocket.paper;

/** A stretch of text in one style; a line feed in it breaks the line. */
public record Run(String text, Style style) {

    public Run {
        text = text == null ? "" : text;
    }
}
