package org.voltdocket.dossier.report;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Recording.Mark;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Series;
import org.voltdocket.paper.Chart;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** Each recording as a chart, with what the chart shows in words and numbers below it. */
final class RecordingsSection {

    private static final float CHART = 430;

    private final TextFormatter words;
    private final ReportContent material;
    private final RecordingChartBuilder charts;

    RecordingsSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
        this.charts = new RecordingChartBuilder(words);
    }

    void print(PdfDocument paper) {
        if (material.series().isEmpty()) {
            return;
        }
        boolean first = true;
        for (EvidenceItem item : material.dossier().evidence()) {
            Series series = material.series().get(item.id());
            if (series != null) {
                paper.keep(CHART);
                if (first) {
                    paper.heading(words.say("report.recordings"));
                    first = false;
                }
                print(paper, item, series, material.dossier().regimesOf(item));
            }
        }
    }

    private void print(PdfDocument paper, EvidenceItem item, Series series, List<RegimeSpan> regimes) {
        paper.subheading(TableCell.of(words.of("kind", item.kind().id()), TextStyle.SUBHEADING)
                .then("  " + item.fileName(), TextStyle.DIM));
        paper.text(TableCell.of(lead(item), TextStyle.SMALL));
        Chart chart = charts.chart(item, series, regimes, material.dossier().findingsOf(item));
        paper.chart(chart);
        Table table = new Table(
                Table.text(words.say("chart.regime"), 3),
                Table.number(words.say("report.stretches"), 2),
                Table.number(words.say("report.time-in"), 2),
                Table.number(words.say("report.share"), 2));
        double whole = series.to() - series.from();
        for (Regime regime : Regime.values()) {
            List<RegimeSpan> spans =
                    regimes.stream().filter(span -> span.regime() == regime).toList();
            double seconds = spans.stream().mapToDouble(s -> s.to() - s.from()).sum();
            if (!spans.isEmpty()) {
                table.row(
                        TableCell.of(words.of("regime", regime.id()), TextStyle.SMALL_STRONG),
                        TableCell.of(String.valueOf(spans.size()), TextStyle.SMALL),
                        TableCell.of(words.clock(seconds), TextStyle.SMALL),
                        TableCell.of(words.percent(whole > 0 ? seconds / whole : 1), TextStyle.SMALL));
            }
        }
        paper.table(table);
        marks(paper, series.marks());
    }

    private String lead(EvidenceItem item) {
        String size = words.say("upload.rows", item.rows(), words.clock(item.durationS()));
        return item.takenAt() == null ? size : words.moment(item.takenAt().toInstant()) + " · " + size;
    }

    private void marks(PdfDocument paper, List<Mark> marks) {
        if (marks.isEmpty()) {
            return;
        }
        paper.text(TableCell.of(words.say("chart.marks"), TextStyle.SMALL_STRONG));
        paper.list(
                marks.stream()
                        .map(mark -> words.clock(mark.atS()) + "  " + mark.text())
                        .toList(),
                true);
    }
}
