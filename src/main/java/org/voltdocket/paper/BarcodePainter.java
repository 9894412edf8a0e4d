package org.voltdocket.paper;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.oned.Code128Writer;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.lowagie.text.pdf.PdfContentByte;
import java.awt.Color;
import java.util.Map;

/** Draws machine-readable codes as vectors, each with the quiet zone that readers need. */
final class BarcodePainter {

    /** Modules left blank on either side of a Code 128 (ISO/IEC 15417). */
    private static final int BAR_QUIET = 10;
    /** Modules left blank around a QR code (ISO/IEC 18004). */
    private static final int QR_QUIET = 4;
    /** Widest module of a bar code, points: 0.5 mm. */
    private static final float WIDEST = LabelSize.points(0.5f);

    private BarcodePainter() {}

    /** A Code 128 from the left, as wide as it needs to be and at most {@code width}. */
    static void bars(PdfContentByte canvas, String text, float left, float bottom, float width, float height) {
        BitMatrix bits =
                new Code128Writer().encode(text, BarcodeFormat.CODE_128, 0, 1, Map.of(EncodeHintType.MARGIN, 0));
        float module = Math.min(WIDEST, width / (bits.getWidth() + 2 * BAR_QUIET));
        canvas.setColorFill(Color.BLACK);
        for (int x = 0; x < bits.getWidth(); x++) {
            int from = x;
            while (x < bits.getWidth() && bits.get(x, 0)) {
                x++;
            }
            if (x > from) {
                canvas.rectangle(left + (BAR_QUIET + from) * module, bottom, (x - from) * module, height);
            }
        }
        canvas.fill();
    }

    /** A QR code in a square, its quiet zone within it. */
    static void square(PdfContentByte canvas, String text, float left, float bottom, float side) {
        BitMatrix bits = qr(text);
        float module = side / (bits.getWidth() + 2 * QR_QUIET);
        canvas.setColorFill(Color.BLACK);
        for (int y = 0; y < bits.getHeight(); y++) {
            for (int x = 0; x < bits.getWidth(); x++) {
                int from = x;
                while (x < bits.getWidth() && bits.get(x, y)) {
                    x++;
                }
                if (x > from) {
                    float rowBottom = bottom + side - (QR_QUIET + y + 1) * module;
                    canvas.rectangle(left + (QR_QUIET + from) * module, rowBottom, (x - from) * module, module);
                }
            }
        }
        canvas.fill();
    }

    private static BitMatrix qr(String text) {
        try {
            return new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.MARGIN,
                                    0,
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M,
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8"));
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + text, e);
        }
    }
}
