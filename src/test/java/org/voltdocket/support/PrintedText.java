package org.voltdocket.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdfparser.PDFParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;

/** Reads printed documents by other code than prints them: Apache PDFBox, and qpdf where the machine has it. */
public final class PrintedText {

    private PrintedText() {}

    /** All text, page by page. */
    public static String of(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    /** Without blanks: text wraps where it must. */
    public static String bare(String text) {
        return text.replaceAll("[\\s\\u00a0\\u202f]+", "");
    }

    /** The title in the document's information. */
    public static String title(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getDocumentInformation().getTitle();
        }
    }

    /** Fails unless the file is read without any leniency, is tagged in a language, and carries every font it uses. */
    public static void check(byte[] pdf) throws IOException, InterruptedException {
        try (PDDocument document = new PDFParser(new RandomAccessReadBuffer(pdf)).parse(false)) {
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
            assertThat(document.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
            assertThat(document.getDocumentCatalog().getMetadata()).isNotNull();
            assertThat(document.getDocumentCatalog().getViewerPreferences().displayDocTitle())
                    .isTrue();
            for (PDPage page : document.getPages()) {
                fonts(page.getResources());
            }
        }
        byQpdf(pdf);
    }

    private static void fonts(PDResources resources) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        }
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject form
                    && form.getResources() != null) {
                fonts(form.getResources());
            }
        }
    }

    /** {@code qpdf --check} exits with 0 where it has nothing to warn of. */
    private static void byQpdf(byte[] pdf) throws IOException, InterruptedException {
        boolean there = Arrays.stream(System.getenv("PATH").split(":"))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, "qpdf")));
        if (!there) {
            assertThat(System.getenv("CI")).as("qpdf is not there").isNull(); // .ci/run installs it
            return;
        }
        Path file = Files.createTempFile("printed", ".pdf");
        try {
            Files.write(file, pdf);
            Process check = new ProcessBuilder("qpdf", "--check", file.toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(check.waitFor(60, TimeUnit.SECONDS)).isTrue();
            assertThat(check.exitValue()).as(said).isZero();
            assertThat(said).doesNotContain("WARNING");
        } finally {
            Files.delete(file);
        }
    }
}
