package org.voltdocket.dossier.report;

import java.util.Optional;
import org.voltdocket.claim.AskedItem;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.OtherGrounds;
import org.voltdocket.dossier.GroundsText;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.ui.Words;

/** The claim: what is asked for, its steps, and the decision with what it rests on. */
final class ClaimPart {

    private final Words words;
    private final Material material;

    ClaimPart(Words words, Material material) {
        this.words = words;
        this.material = material;
    }

    void print(Paper paper) {
        material.dossier().claim().ifPresent(claim -> print(paper, claim));
    }

    private void print(Paper paper, Claim claim) {
        paper.heading(words.say("claim.title"));
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "claim.asked", claim.asked().toString());
        row(table, "fact.claim.state", words.of("claim-state", claim.state().id()));
        row(table, "claim.by", material.dossier().workshopNames().getOrDefault(claim.workshop(), "–"));
        row(table, "claim.opened", words.moment(claim.openedAt()));
        paper.table(table);
        steps(paper, claim);
        asked(paper, claim);
        claim.decision().ifPresent(decision -> decision(paper, claim, decision));
        material.dossier().otherGrounds().ifPresent(other -> other(paper, other));
    }

    private void steps(Paper paper, Claim claim) {
        Table table = new Table(
                Table.text(words.say("claim.step.at"), 2.2f),
                Table.text(words.say("claim.step.who"), 1.6f),
                Table.text(words.say("claim.step.what"), 2.2f),
                Table.text(words.say("claim.step.why"), 4));
        for (ClaimStep step : claim.steps()) {
            table.row(
                    Cell.of(words.moment(step.at()), Style.SMALL),
                    Cell.of(step.by(), Style.SMALL),
                    Cell.of(
                            (step.from() == step.to() && step.action().decides()
                                            ? words.say("claim.step.proposed") + " "
                                            : "")
                                    + words.of("claim-step", step.action().id()),
                            Style.SMALL),
                    Cell.of(Optional.ofNullable(step.reason()).orElse(""), Style.SMALL));
        }
        if (!table.isEmpty()) {
            paper.subheading(Cell.of(words.say("claim.steps"), Style.SUBHEADING));
            paper.table(table);
        }
    }

    private void asked(Paper paper, Claim claim) {
        if (claim.wanted().isEmpty()) {
            return;
        }
        paper.subheading(Cell.of(words.say("claim.awaited"), Style.SUBHEADING));
        Table table = new Table(
                Table.text(words.say("fact.claim.item"), 4),
                Table.text(words.say("report.answered"), 2),
                Table.text(words.say("fact.claim.words"), 4));
        for (AskedItem item : claim.wanted()) {
            table.row(
                    Cell.of(name(item), Style.SMALL_STRONG),
                    Cell.of(words.say(item.answered() ? "claim.awaited.here" : "claim.awaited.not"), Style.SMALL),
                    Cell.of(String.join("; ", item.words()), Style.SMALL));
        }
        paper.table(table);
    }

    private String name(AskedItem item) {
        if (item.id() == null) {
            return item.text();
        }
        return words.knows("kind", item.id()) ? words.of("kind", item.id()) : words.of("fact", item.id());
    }

    private void decision(Paper paper, Claim claim, ClaimDecision decision) {
        paper.subheading(Cell.of(
                words.say("claim.decision") + ": "
                        + words.of("claim-state", decision.kind().id()),
                Style.SUBHEADING));
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "claim.decision.paid", decision.paid().toString());
        row(table, "claim.decision.reason", decision.reason());
        row(table, "claim.decision.by", words.moment(decision.at()) + ", " + decision.by());
        decision.confirmation()
                .ifPresent(second -> row(
                        table,
                        "claim.decision.second",
                        words.say(
                                "claim.decision.second.by",
                                second.by(),
                                decision.by(),
                                words.moment(second.proposedAt()),
                                decision.limit().orElseThrow())));
        row(
                table,
                "claim.decision.rests",
                words.say("claim.decision.edition", decision.edition()) + " "
                        + words.of("leaning", decision.leaning().id()));
        table.row(
                Cell.of(words.say("fact.claim.assessment"), Style.SMALL_STRONG),
                Cell.of(decision.assessmentSha256().hex(), Style.MONO));
        if (!claim.warranty().said().isEmpty()) {
            row(table, "letter.terms", String.join(" ", claim.warranty().said()));
        }
        paper.table(table);
        if (decision.againstLeaning()) {
            paper.text(Cell.of(words.say("claim.decision.against"), Style.STRONG));
        }
    }

    private void other(Paper paper, OtherGrounds other) {
        paper.text(Cell.of(words.say("claim.decision.other"), Style.STRONG));
        paper.list(new GroundsText(words, material.dossier()).lines(other), false);
    }

    private void row(Table table, String label, String value) {
        table.row(Cell.of(words.say(label), Style.SMALL_STRONG), Cell.of(value, Style.SMALL));
    }
}
