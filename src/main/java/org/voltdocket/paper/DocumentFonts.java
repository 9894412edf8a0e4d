package org.voltdocket.paper;

import com.lowagie.text.Chunk;
import com.lowagie.text.Font;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.SecureRandom;
import java.util.EnumMap;
import java.util.Map;
import org.voltdocket.kernel.Sha256;

/** The fonts of one document, embedded as subsets. Create one instance per document: a font records the characters it printed. */
final class DocumentFonts implements FontMapper {

    private static final Map<TextStyle.Face, String> FILES = Map.of(
            TextStyle.Face.PLAIN, "DejaVuSansCondensed.ttf",
            TextStyle.Face.BOLD, "DejaVuSansCondensed-Bold.ttf",
            TextStyle.Face.MONO, "DejaVuSansMono.ttf");

    private final Map<TextStyle.Face, BaseFont> fonts = new EnumMap<>(TextStyle.Face.class);

    DocumentFonts(Sha256 identity) {
        Letters letters = new Letters(identity);
        for (TextStyle.Face face : TextStyle.Face.values()) {
            String name = FILES.get(face);
            try {
                BaseFont font =
                        BaseFont.createFont(name, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, bytes(name), null);
                font.setSecureRandom(letters);
                fonts.put(face, font);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    static byte[] bytes(String name) throws IOException {
        try (InputStream in = DocumentFonts.class.getResourceAsStream("/fonts/" + name)) {
            if (in == null) {
                throw new IOException("the program is not whole: it has no font " + name);
            }
            return in.readAllBytes();
        }
    }

    static byte[] bytes(TextStyle.Face face) throws IOException {
        return bytes(FILES.get(face));
    }

    Phrase phrase(TableCell cell) {
        Phrase phrase = new Phrase();
        float leading = 0;
        for (TextRun run : cell.runs()) {
            leading = Math.max(leading, run.style().leading());
        }
        phrase.setLeading(leading);
        for (TextRun run : cell.runs()) {
            TextStyle style = run.style();
            phrase.add(new Chunk(
                    printable(run.text(), style), new Font(fonts.get(style.face), style.size, Font.NORMAL, style.ink)));
        }
        return phrase;
    }

    /** Characters missing in the font are printed as a box. */
    private String printable(String text, TextStyle style) {
        BaseFont font = fonts.get(style.face);
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> c == '\t' ? ' ' : c)
                .filter(c -> c == '\n' || !Character.isISOControl(c))
                .forEach(c -> out.appendCodePoint(c == '\n' || font.charExists(c) ? c : '\u25a1'));
        return out.toString();
    }

    BaseFont font(TextStyle style) {
        return fonts.get(style.face);
    }

    @Override
    public BaseFont awtToPdf(java.awt.Font font) {
        return fonts.get(font.isBold() ? TextStyle.Face.BOLD : TextStyle.Face.PLAIN);
    }

    @Override
    public java.awt.Font pdfToAwt(BaseFont font, int size) {
        throw new UnsupportedOperationException("charts are only written");
    }

    /** Six-letter tags of font subsets, derived from the document's identity instead of random numbers. */
    private static final class Letters extends SecureRandom {

        private static final long serialVersionUID = 1L;
        private static final double BYTE = 256;

        private final byte[] source;
        private int next;

        Letters(Sha256 identity) {
            this.source = identity.bytes();
        }

        @Override
        public double nextDouble() {
            return (source[next++ % source.length] & 0xff) / BYTE;
        }
    }
}
