package org.voltdocket.dossier.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Estimate;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** Every finding with value, interval, limit and source, then the estimates. */
final class FindingsSection {

    private static final List<Result> ORDER = List.of(Result.OUTSIDE, Result.UNCERTAIN, Result.INSIDE);

    private final TextFormatter words;
    private final ReportContent material;

    FindingsSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        material.assessment().ifPresent(assessment -> {
            paper.heading(words.say("findings.title"));
            findings(paper, assessment);
            estimates(paper, assessment.estimates());
        });
    }

    private void findings(PdfDocument paper, Assessment assessment) {
        if (assessment.findings().isEmpty()) {
            paper.text(TableCell.of(words.say("findings.none"), TextStyle.BODY));
            return;
        }
        Map<String, String> files = material.dossier().evidence().stream()
                .collect(Collectors.toMap(item -> item.id().toString(), EvidenceItem::fileName));
        Table table = new Table(
                Table.text(words.say("findings.result"), 1.25f),
                Table.text(words.say("findings.said"), 4.3f),
                Table.number(words.say("findings.value"), 1.9f),
                Table.number(words.say("findings.limit"), 1.7f),
                Table.text(words.say("report.from"), 3f));
        assessment.findings().stream()
                .sorted(Comparator.comparingInt(finding -> ORDER.indexOf(finding.result())))
                .forEach(finding -> table.row(
                        TableCell.of(words.of("result", finding.result().id()), TextStyle.SMALL_STRONG),
                        TableCell.of(finding.said(), TextStyle.SMALL)
                                .below(
                                        words.of("quantity", words.bare(finding.quantity())) + " · " + finding.rule(),
                                        TextStyle.DIM),
                        value(finding),
                        TableCell.of(limit(finding), TextStyle.SMALL),
                        TableCell.of(
                                        finding.evidence() == null
                                                ? words.say("findings.facts")
                                                : files.getOrDefault(finding.evidence(), finding.evidence()),
                                        TextStyle.SMALL)
                                .below(finding.source(), TextStyle.DIM)));
        paper.table(table);
    }

    private TableCell value(Finding f) {
        TableCell value = TableCell.of(withUnit(words.number(f.value()), f.unit()), TextStyle.SMALL_STRONG);
        boolean interval = f.low() != null && f.high() != null && !f.low().equals(f.high());
        return interval ? value.below(words.number(f.low()) + " … " + words.number(f.high()), TextStyle.DIM) : value;
    }

    private String limit(Finding f) {
        if (f.limit() == null) {
            return words.say("none");
        }
        // if a window's upper end was passed, the assessment sets both limits to the upper end
        boolean window = f.limitHigh() != null && !f.limitHigh().equals(f.limit());
        String how = f.limitHigh() != null && !window ? "at-most" : f.comparison();
        String number =
                window ? words.number(f.limit()) + " … " + words.number(f.limitHigh()) : words.number(f.limit());
        return words.of("comparison", how) + " " + withUnit(number, f.unit());
    }

    private String withUnit(String number, String unit) {
        String name = words.of("unit", unit);
        return name.isEmpty() ? number : number + "\u00a0" + name;
    }

    private void estimates(PdfDocument paper, Map<String, Estimate> estimates) {
        if (estimates.isEmpty()) {
            return;
        }
        Table table = new Table(
                Table.text(words.say("report.estimate"), 5),
                Table.number(words.say("findings.value"), 2),
                Table.number(words.say("report.interval"), 3));
        estimates.forEach((name, estimate) -> table.row(
                TableCell.of(words.of("estimate", name), TextStyle.SMALL_STRONG),
                TableCell.of(withUnit(words.number(estimate.value()), estimate.unit()), TextStyle.SMALL),
                TableCell.of(words.number(estimate.low()) + " … " + words.number(estimate.high()), TextStyle.SMALL)));
        paper.heading(words.say("estimates.title"));
        paper.text(TableCell.of(words.say("report.interval.means"), TextStyle.DIM));
        paper.table(table);
    }
}
