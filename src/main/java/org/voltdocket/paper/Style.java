package org.voltdocket.paper;

import java.awt.Color;

/** The few kinds of type in the house style; sizes in points. */
public enum Style {
    TITLE(Face.BOLD, 19, Ink.ACCENT),
    HEADING(Face.BOLD, 12.5f, Ink.ACCENT),
    SUBHEADING(Face.BOLD, 9.5f, Ink.INK),
    LEAD(Face.BOLD, 11.5f, Ink.INK),
    BODY(Face.PLAIN, 9, Ink.INK),
    STRONG(Face.BOLD, 9, Ink.INK),
    SMALL(Face.PLAIN, 7.8f, Ink.INK),
    SMALL_STRONG(Face.BOLD, 7.8f, Ink.INK),
    DIM(Face.PLAIN, 7.8f, Ink.DIM),
    /** Serials, digests: every character of one width. */
    MONO(Face.MONO, 7.8f, Ink.INK),
    MONO_LARGE(Face.MONO, 9, Ink.INK);

    enum Face {
        PLAIN,
        BOLD,
        MONO
    }

    final Face face;
    final float size;
    final Color ink;

    Style(Face face, float size, Color ink) {
        this.face = face;
        this.size = size;
        this.ink = ink;
    }

    float leading() {
        return size * 1.32f;
    }
}
