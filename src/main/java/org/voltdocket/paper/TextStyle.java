package org.voltdocket.paper;

import java.awt.Color;

/** The few kinds of type in the house style; sizes in points. */
public enum TextStyle {
    TITLE(Face.BOLD, 19, DocumentColors.ACCENT),
    HEADING(Face.BOLD, 12.5f, DocumentColors.ACCENT),
    SUBHEADING(Face.BOLD, 9.5f, DocumentColors.INK),
    LEAD(Face.BOLD, 11.5f, DocumentColors.INK),
    BODY(Face.PLAIN, 9, DocumentColors.INK),
    STRONG(Face.BOLD, 9, DocumentColors.INK),
    SMALL(Face.PLAIN, 7.8f, DocumentColors.INK),
    SMALL_STRONG(Face.BOLD, 7.8f, DocumentColors.INK),
    DIM(Face.PLAIN, 7.8f, DocumentColors.DIM),
    /** Serials, digests: every character of one width. */
    MONO(Face.MONO, 7.8f, DocumentColors.INK),
    MONO_LARGE(Face.MONO, 9, DocumentColors.INK);

    enum Face {
        PLAIN,
        BOLD,
        MONO
    }

    final Face face;
    final float size;
    final Color ink;

    TextStyle(Face face, float size, Color ink) {
        this.face = face;
        this.size = size;
        this.ink = ink;
    }

    float leading() {
        return size * 1.32f;
    }
}
