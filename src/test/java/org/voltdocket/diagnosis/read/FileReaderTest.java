package org.voltdocket.diagnosis.read;

import static org.assertj.core.api.Assertions.assertThat;

import com.lowagie.text.Document;
import com.lowagie.text.Paragraph;
import com.lowagie.text.pdf.PdfWriter;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.read.RejectedFile.Reason;

/** Kinds are told by content, with real files of each kind. */
class FileReaderTest {

    @TempDir
    private Path folder;

    private ReadResult read(byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve("upload"), bytes);
        return new FileReader(file, Instant.parse("2026-11-20T12:00:00Z"), size -> {}).read();
    }

    private void refused(byte[] bytes, Reason reason, String word) throws IOException {
        ReadResult outcome = read(bytes);
        assertThat(outcome).isInstanceOf(RejectedFile.class);
        assertThat(((RejectedFile) outcome).reason()).isEqualTo(reason);
        assertThat(((RejectedFile) outcome).detail()).contains(word);
    }

    private static byte[] image(String format) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), format, out);
        return out.toByteArray();
    }

    private static byte[] pdf() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Document document = new Document()) {
            PdfWriter.getInstance(document, out);
            document.open();
            document.add(new Paragraph("Photographed label"));
        }
        return out.toByteArray();
    }

    private static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (OutputStream gz = new GZIPOutputStream(out)) {
            gz.write(plain);
        }
        return out.toByteArray();
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg", "pdf"})
    void takesWholeDocumentsAndRefusesCutOnes(String format) throws IOException {
        byte[] whole = format.equals("pdf") ? pdf() : image(format);
        ReadResult outcome = read(whole);
        assertThat(outcome).isInstanceOf(ParsedFile.class);
        assertThat(((ParsedFile) outcome).kind()).isEqualTo(EvidenceKind.DOCUMENT);
        assertThat(((ParsedFile) outcome).mediaType()).endsWith(format.replace("jpg", "jpeg"));
        for (int left : new int[] {whole.length - 8, whole.length / 2, 12, 9}) {
            refused(Arrays.copyOf(whole, left), Reason.DOCUMENT, "damaged");
        }
    }

    @Test
    void takesGzippedRecordingsAndRefusesDamagedOnes() throws IOException {
        byte[] packed = gzip(text(Csv.steady(12.5)));
        assertThat(((ParsedFile) read(packed)).mediaType()).isEqualTo("application/gzip");
        refused(Arrays.copyOf(packed, packed.length - 9), Reason.RECORDING, "cut short");
        byte[] wrong = packed.clone();
        wrong[wrong.length - 6] ^= 1;
        refused(wrong, Reason.RECORDING, "damaged");
        refused(gzip(text("{}")), Reason.KIND_UNKNOWN, "JSON");
        refused(gzip(image("png")), Reason.KIND_UNKNOWN, "neither text");
        refused(gzip(new byte[0]), Reason.RECORDING, "empty");
    }

    @Test
    void refusesWhatItDoesNotRead() throws IOException {
        refused(new byte[0], Reason.RECORDING, "empty");
        refused(new byte[] {'P', 'K', 3, 4, 0, 0}, Reason.KIND_UNKNOWN, "ZIP");
        refused("time_s".getBytes(StandardCharsets.UTF_16), Reason.KIND_UNKNOWN, "UTF-16");
        refused(text(" [{}]"), Reason.KIND_UNKNOWN, "one object");
        refused(text("\n<html>"), Reason.KIND_UNKNOWN, "XML");
        refused(new byte[] {1, 2, 3, 0}, Reason.KIND_UNKNOWN, "Taken are recordings");
        refused(text("{" + " ".repeat(1 << 20)), Reason.TEST_RECORD, "1 MiB");
        refused(text("Dear distributor,\n"), Reason.RECORDING, "header");
    }

    @Test
    void findsAnObjectBehindBlanksAndAByteOrderMark() throws IOException {
        String test = "{\"kind\":\"cranking-test\",\"takenAt\":\"2026-03-04T08:40:00Z\",\"minimumVoltageV\":9.9,"
                + "\"temperatureC\":12}";
        assertThat(read(text("\uFEFF \n" + test))).isInstanceOf(ParsedFile.class);
    }
}
