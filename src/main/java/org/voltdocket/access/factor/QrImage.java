package org.voltdocket.access.factor;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Map;

/** Draws a text as a QR code (ISO/IEC 18004) in SVG, as the address of an image. */
final class QrImage {

    /** Modules around the code, as ISO/IEC 18004 asks for. */
    private static final int QUIET_ZONE = 4;

    private QrImage() {}

    /** A {@code data:} address of black modules on white. */
    static String dataUri(String text) {
        BitMatrix modules;
        try {
            modules = new QRCodeWriter()
                    .encode(text, BarcodeFormat.QR_CODE, 0, 0, Map.of(EncodeHintType.MARGIN, QUIET_ZONE));
        } catch (WriterException e) {
            throw new IllegalArgumentException("the text does not fit into a QR code", e);
        }
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                if (modules.get(x, y)) {
                    path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        String box = "0 0 " + modules.getWidth() + " " + modules.getHeight();
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + box + "\" shape-rendering=\"crispEdges\">"
                + "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/><path d=\"" + path + "\"/></svg>";
        return "data:image/svg+xml;base64," + Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
    }
}
