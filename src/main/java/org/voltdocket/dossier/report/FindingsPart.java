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
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** Every finding with value, interval, limit and source, then the estimates. */
final class FindingsPart {

    private static final List<Result> ORDER = List.of(Result.OUTSIDE, Result.UNCERTAIN, Result.INSIDE);

    private final Words words;
    private final Material material;

    FindingsPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        material.assessment().ifPresent(assessment -> {
            paper.heading(words.say("findings.title"));
            findings(paper, assessment);
            estimates(paper, assessment.estimates());
        });
    }

    private void findings(Paper paper, Assessment assessment) {
        if (assessment.findings().isEmpty()) {
            paper.text(Cell.of(words.say("findings.none"), Style.BODY));
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
                        Cell.of(words.of("result", finding.result().id()), Style.SMALL_STRONG),
                        Cell.of(finding.said(), Style.SMALL)
                                .below(
                                        words.of("quantity", words.bare(finding.quantity())) + " · " + finding.rule(),
                                        Style.DIM),
                        value(finding),
                        Cell.of(limit(finding), Style.SMALL),
                        Cell.of(
                                        finding.evidence() == null
                                                ? words.say("findings.facts")
                                                : files.getOrDefault(finding.evidence(), finding.evidence()),
                                        Style.SMALL)
                                .below(finding.source(), Style.DIM)));
        paper.table(table);
    }

    private Cell value(Finding f) {
        Cell value = Cell.of(withUnit(words.number(f.value()), f.unit()), Style.SMALL_STRONG);
        boolean interval = f.low() != null && f.high() != null && !f.low().equals(f.high());
        return interval ? value.below(words.number(f.low()) + " … " + words.number(f.high()), Style.DIM) : value;
    }

    private String limit(Finding f) {
        if (f.limit() == null) {
            return words.say("none");
        }
        // of a window the judge names the end that was passed: both are the upper one then
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

    private void estimates(Paper paper, Map<String, Estimate> estimates) {
        if (estimates.isEmpty()) {
            return;
        }
        Table table = new Table(
                Table.text(words.say("report.estimate"), 5),
                Table.number(words.say("findings.value"), 2),
                Table.number(words.say("report.interval"), 3));
        estimates.forEach((name, estimate) -> table.row(
                Cell.of(words.of("estimate", name), Style.SMALL_STRONG),
                Cell.of(withUnit(words.number(estimate.value()), estimate.unit()), Style.SMALL),
                Cell.of(words.number(estimate.low()) + " … " + words.number(estimate.high()), Style.SMALL)));
        paper.heading(words.say("estimates.title"));
        paper.text(Cell.of(words.say("report.interval.means"), Style.DIM));
        paper.table(table);
    }
}
