package org.voltdocket.dossier.report;

import java.util.HashMap;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** The causes with their probabilities, each with what every finding gave it or took from it. */
final class CausesSection {

    private final TextFormatter words;
    private final ReportContent material;

    CausesSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        material.assessment().ifPresent(assessment -> print(paper, assessment));
    }

    private void print(PdfDocument paper, Assessment assessment) {
        Map<String, String> said = new HashMap<>();
        for (Finding finding : assessment.findings()) {
            said.put(finding.id(), finding.said());
        }
        Table ranking = new Table(
                Table.text(words.say("report.cause"), 3),
                Table.number(words.say("list.probability"), 1.4f),
                Table.text(words.say("weights.means"), 6));
        for (RankedCause cause : assessment.causes()) {
            String id = cause.cause().id();
            ranking.row(
                    TableCell.of(words.of("cause-name", id), TextStyle.SMALL_STRONG),
                    TableCell.of(words.percent(cause.probability()), TextStyle.SMALL),
                    TableCell.of(words.of("cause-means", id), TextStyle.DIM));
        }
        paper.heading(words.say("causes.title"));
        paper.table(ranking);
        paper.heading(words.say("report.weights"));
        paper.text(TableCell.of(words.say("causes.lead"), TextStyle.DIM));
        for (RankedCause cause : assessment.causes()) {
            weights(paper, cause, said);
        }
    }

    private void weights(PdfDocument paper, RankedCause cause, Map<String, String> said) {
        if (cause.weights().isEmpty()) {
            return;
        }
        Table table = new Table(
                Table.text(words.say("weights.finding"), 7),
                Table.number(words.say("weights.decibans"), 1.2f),
                Table.text(words.say("weights.means"), 2.3f));
        for (Weight weight : cause.weights()) {
            table.row(
                    TableCell.of(said.getOrDefault(weight.finding(), weight.finding()), TextStyle.SMALL),
                    TableCell.of(words.decibans(weight.decibans()), TextStyle.SMALL),
                    TableCell.of(words.odds(weight.decibans()), TextStyle.DIM));
        }
        paper.subheading(TableCell.of(
                words.of("cause-name", cause.cause().id()) + ", " + words.percent(cause.probability()),
                TextStyle.SUBHEADING));
        paper.table(table);
    }
}
