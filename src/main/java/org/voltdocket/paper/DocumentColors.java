package org.voltdocket.paper;

import java.awt.Color;

/** Colours by role. "Measured" and "reported" keep theirs everywhere; each differs from its neighbours in grey too. */
public final class DocumentColors {

    public static final Color INK = new Color(0x1d2429);
    public static final Color DIM = new Color(0x565c5b);
    public static final Color ACCENT = new Color(0x17505f);
    public static final Color MEASURED = new Color(0x0f6577);
    public static final Color REPORTED = new Color(0xb4500f);
    public static final Color LIMIT = new Color(0x7a2e5d);

    static final Color LINE = new Color(0xcfcabd);
    static final Color SUNK = new Color(0xf1eee6);
    static final Color CAUTION = new Color(0xfff3c9);
    static final Color CAUTION_LINE = new Color(0x8a6b00);

    private DocumentColors() {}
}
