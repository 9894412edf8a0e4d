package org.voltdocket.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.Sha256;

class PdfDocumentTest {

    /** A stretch of furniture that holds text. */
    private static final Pattern TEXT_IN_ARTIFACT =
            Pattern.compile("/Artifact BMC(?:(?!EMC).)*?\\bT[jJ]\\b", Pattern.DOTALL);

    private static final Sha256 IDENTITY = Sha256.of(new byte[] {1});

    @Test
    void theSameCallsGiveTheSameBytes() {
        Consumer<PdfDocument> content = paper -> {
            paper.title("Title", TableCell.of("below", TextStyle.BODY));
            paper.chart(chart());
        };
        assertThat(print(IDENTITY, content)).isEqualTo(print(IDENTITY, content));
        assertThat(print(Sha256.of(new byte[] {2}), content)).isNotEqualTo(print(IDENTITY, content));
    }

    @Test
    void longTablesTurnThePageAndRepeatTheirHeads() throws IOException {
        PdfReader pdf = new PdfReader(print(IDENTITY, paper -> {
            Table table = new Table(Table.text("Place", 1), Table.number("Value", 1));
            IntStream.range(0, 120)
                    .forEach(i -> table.row(
                            TableCell.of("row" + i, TextStyle.BODY), TableCell.of("" + i * 7, TextStyle.BODY)));
            paper.table(table);
        }));
        assertThat(pdf.getNumberOfPages()).isGreaterThan(2);
        PdfTextExtractor text = new PdfTextExtractor(pdf);
        StringBuilder all = new StringBuilder();
        for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
            String one = text.getTextFromPage(page);
            // the library's reader leaves out artifacts: running heads, page numbers, and heads that come again
            String content = new String(pdf.getPageContent(page), StandardCharsets.ISO_8859_1);
            assertThat(TEXT_IN_ARTIFACT.matcher(content).results().count()).isEqualTo(page == 1 ? 1 : 3);
            assertThat(one.contains("Place")).isEqualTo(page == 1);
            all.append(one).append('\n');
        }
        IntStream.range(0, 120).forEach(i -> assertThat(all.toString()).contains("row" + i));
    }

    @Test
    void aRowHigherThanAPageGoesOnOnTheNext() throws IOException {
        String words = "measured ".repeat(1500) + "end";
        PdfReader pdf = new PdfReader(print(
                IDENTITY,
                paper -> paper.table(new Table(Table.text("A", 1), Table.text("B", 1))
                        .row(TableCell.of("short", TextStyle.BODY), TableCell.of(words, TextStyle.BODY)))));
        assertThat(pdf.getNumberOfPages()).isGreaterThan(1);
        PdfTextExtractor text = new PdfTextExtractor(pdf);
        assertThat(text.getTextFromPage(pdf.getNumberOfPages())).contains("end");
    }

    @Test
    void aCharacterWithoutAShapeShowsAsABox() throws IOException {
        PdfReader pdf = new PdfReader(print(IDENTITY, paper -> paper.text(TableCell.of("測定 Ω − ½", TextStyle.BODY))));
        assertThat(new PdfTextExtractor(pdf).getTextFromPage(1)).contains("□□ Ω − ½");
    }

    @Test
    void aRowOfAnotherWidthIsRefused() {
        assertThatThrownBy(() -> new Table(Table.text("A", 1))
                        .row(TableCell.of("a", TextStyle.BODY), TableCell.of("b", TextStyle.BODY)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2 cells for 1 columns");
    }

    private static Chart chart() {
        double[] time = IntStream.range(0, 500).asDoubleStream().toArray();
        double[] volts = IntStream.range(0, 500)
                .mapToDouble(i -> i == 250 ? Double.NaN : 12 + i % 7 / 10.0)
                .toArray();
        return new Chart(
                "a chart",
                0,
                499,
                "Time",
                List.of(new Chart.Panel(
                        "V",
                        List.of(new Chart.Line("measured", time, volts, DocumentColors.MEASURED, false)),
                        List.of(new Chart.Limit("limit", 12.9)),
                        null)),
                List.of(
                        new Chart.Band("at rest", 0, 100, DocumentColors.SUNK),
                        new Chart.Band("holding", 100, 499, DocumentColors.LINE)),
                List.of(new Chart.Mark(1, 300)));
    }

    private static byte[] print(Sha256 identity, Consumer<PdfDocument> content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentMetadata imprint = new DocumentMetadata(
                "Title", "subject", "head", "foot", "en", Instant.parse("2026-03-04T08:40:00Z"), identity);
        try (PdfDocument paper = PdfDocument.open(out, imprint)) {
            content.accept(paper);
        }
        return out.toByteArray();
    }
}
