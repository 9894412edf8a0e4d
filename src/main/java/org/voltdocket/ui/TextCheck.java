package org.voltdocket.ui;

/** Checks for characters that no text in a request may contain, because PostgreSQL cannot store them. */
final class TextCheck {

    private TextCheck() {}

    /** Whether the text has neither a NUL nor half of a surrogate pair. */
    static boolean isStorable(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0 || Character.isLowSurrogate(c)) {
                return false;
            }
            if (Character.isHighSurrogate(c)) {
                i++;
                if (i == text.length() || !Character.isLowSurrogate(text.charAt(i))) {
                    return false;
                }
            }
        }
        return true;
    }
}
