package org.voltdocket.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.kernel.Sha256;

/** Labels as printed: drawn as pictures at 300 dpi and read by another library's readers of codes. */
class LabelPrinterTest {

    private static final float DPI = 300;
    private static final String ADDRESS = "https://batteries.example.test/returns/3f8d1c0a-9f0e-4a52-8c6a-0a1b2c3d4e5f";
    private static final LabelSize SIZE = new LabelSize(100, 62);
    private static final List<String> CAUTIONS = List.of(
            "UN 2794 BATTERIES, WET, FILLED WITH ACID, class 8.",
            "Whether special provision 598 of ADR holds for a warranty return, a qualified person rules.",
            "Keep upright, cover the posts, no sparks or flames.",
            "Acid: goggles and gloves; on contact rinse with water for 15 to 20 minutes and see a doctor.",
            "Never charge or load-test if frozen, leaking, cracked or swollen.");

    private static Label label(String serial) {
        return new Label(
                serial, ADDRESS, "R-000123", List.of("Case V-0K3-9TF-R", "Arrived 4 Mar 2026", "AGM, 70 Ah"), CAUTIONS);
    }

    private static DocumentMetadata imprint() {
        return new DocumentMetadata(
                "Labels", "A label", "", "", "en", Instant.parse("2026-03-04T08:00:00Z"), Sha256.of(new byte[] {7}));
    }

    private static byte[] roll(LabelSize size, Label... labels) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        LabelPrinter.roll(out, imprint(), size, List.of(labels));
        return out.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(strings = {"A-1/", "HT-2209-004417", "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-./9"})
    void bothCodesAreReadOffThePrintedLabel(String serial) throws Exception {
        BufferedImage picture = picture(roll(SIZE, label(serial)), 0);
        assertThat(read(picture, BarcodeFormat.CODE_128)).isEqualTo(serial);
        assertThat(read(picture, BarcodeFormat.QR_CODE)).isEqualTo(ADDRESS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"100x62", "60x50", "62x62", "150x100"})
    void everySizeKeepsAllItsText(String size) throws Exception {
        String[] sides = size.split("x");
        LabelSize own = new LabelSize(Float.parseFloat(sides[0]), Float.parseFloat(sides[1]));
        byte[] printed = roll(own, label("HT-2209-004417"));
        assertThat(text(printed)).contains("HT-2209-004417", "R-000123", "V-0K3-9TF-R", "UN 2794", "swollen");
        BufferedImage picture = picture(printed, 0);
        assertThat(picture.getWidth())
                .isBetween((int) (own.widthMm() / 25.4 * DPI) - 2, (int) (own.widthMm() / 25.4 * DPI) + 2);
        assertThat(read(picture, BarcodeFormat.CODE_128)).isEqualTo("HT-2209-004417");
        assertThat(read(picture, BarcodeFormat.QR_CODE)).isEqualTo(ADDRESS);
    }

    @Test
    void sheetsHoldAsManyAsFitAndEveryOneReads() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<Label> nine =
                IntStream.range(0, 9).mapToObj(i -> label("HT-" + (1000 + i))).toList();
        LabelPrinter.sheets(out, imprint(), SIZE, nine);
        List<String> read = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(out.toByteArray())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(2);
            BufferedImage sheet = new PDFRenderer(pdf).renderImageWithDPI(0, DPI);
            int width = sheet.getWidth() / 2;
            int height = sheet.getHeight() / 4;
            for (int place = 0; place < 8; place++) {
                read.add(read(
                        sheet.getSubimage(place % 2 * width, place / 2 * height, width, height),
                        BarcodeFormat.CODE_128));
            }
        }
        assertThat(read).isEqualTo(nine.subList(0, 8).stream().map(Label::code).toList());
    }

    @Test
    void theSameLabelGivesTheSameBytes() {
        assertThat(roll(SIZE, label("HT-1"))).isEqualTo(roll(SIZE, label("HT-1")));
    }

    @Test
    void aSizeThatNothingFitsOnIsRefused() {
        assertThatThrownBy(() -> new LabelSize(20, 62)).hasMessageContaining("60 to 210 mm");
        assertThatThrownBy(() -> new LabelSize(Float.NaN, 62)).isInstanceOf(IllegalArgumentException.class);
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static BufferedImage picture(byte[] pdf, int page) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFRenderer(document).renderImageWithDPI(page, DPI);
        }
    }

    private static String read(BufferedImage picture, BarcodeFormat format) throws NotFoundException {
        int width = picture.getWidth();
        int height = picture.getHeight();
        int[] pixels = picture.getRGB(0, 0, width, height, null, 0, width);
        BinaryBitmap bits = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels)));
        return new MultiFormatReader()
                .decode(
                        bits,
                        Map.of(
                                DecodeHintType.POSSIBLE_FORMATS,
                                List.of(format),
                                DecodeHintType.TRY_HARDER,
                                Boolean.TRUE))
                .getText();
    }
}
