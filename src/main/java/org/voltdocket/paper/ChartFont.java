package org.voltdocket.paper;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/** The document's fonts as the chart library measures text with: the same files, whatever the system has. */
public final class ChartFont {

    private static final Font PLAIN = load(TextStyle.Face.PLAIN);
    private static final Font BOLD = load(TextStyle.Face.BOLD).deriveFont(Font.BOLD);

    private ChartFont() {}

    /** Plain letters. */
    public static Font plain(float size) {
        return PLAIN.deriveFont(size);
    }

    /** Bold letters. */
    public static Font bold(float size) {
        return BOLD.deriveFont(size);
    }

    private static Font load(TextStyle.Face face) {
        try {
            return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(DocumentFonts.bytes(face)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("the program is not whole: a font is damaged", e);
        }
    }
}
