package org.voltdocket.dossier.report;

import java.util.HashMap;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** The causes with their probabilities, each with what every finding gave it or took from it. */
final class CausesPart {

    private final Words words;
    private final Material material;

    CausesPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        material.assessment().ifPresent(assessment -> print(paper, assessment));
    }

    private void print(Paper paper, Assessment assessment) {
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
                    Cell.of(words.of("cause-name", id), Style.SMALL_STRONG),
                    Cell.of(words.percent(cause.probability()), Style.SMALL),
                    Cell.of(words.of("cause-means", id), Style.DIM));
        }
        paper.heading(words.say("causes.title"));
        paper.table(ranking);
        paper.heading(words.say("report.weights"));
        paper.text(Cell.of(words.say("causes.lead"), Style.DIM));
        for (RankedCause cause : assessment.causes()) {
            weights(paper, cause, said);
        }
    }

    private void weights(Paper paper, RankedCause cause, Map<String, String> said) {
        if (cause.weights().isEmpty()) {
            return;
        }
        Table table = new Table(
                Table.text(words.say("weights.finding"), 7),
                Table.number(words.say("weights.decibans"), 1.2f),
                Table.text(words.say("weights.means"), 2.3f));
        for (Weight weight : cause.weights()) {
            table.row(
                    Cell.of(said.getOrDefault(weight.finding(), weight.finding()), Style.SMALL),
                    Cell.of(words.decibans(weight.decibans()), Style.SMALL),
                    Cell.of(words.odds(weight.decibans()), Style.DIM));
        }
        paper.subheading(Cell.of(
                words.of("cause-name", cause.cause().id()) + ", " + words.percent(cause.probability()),
                Style.SUBHEADING));
        paper.table(table);
    }
}
