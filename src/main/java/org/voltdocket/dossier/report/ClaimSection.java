package org.voltdocket.dossier.report;

import java.util.Optional;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.DecisionBasisChange;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.dossier.DecisionBasisText;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** The claim: what is asked for, its steps, and the decision with what it rests on. */
final class ClaimSection {

    private final TextFormatter words;
    private final ReportContent material;

    ClaimSection(TextFormatter words, ReportContent material) {
        this.words = words;
        this.material = material;
    }

    void print(PdfDocument paper) {
        material.dossier().claim().ifPresent(claim -> print(paper, claim));
    }

    private void print(PdfDocument paper, Claim claim) {
        paper.heading(words.say("claim.title"));
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "claim.amount-claimed", claim.amount().toString());
        row(table, "fact.claim.state", words.of("claim-state", claim.state().id()));
        row(table, "claim.by", material.dossier().workshopNames().getOrDefault(claim.workshop(), "–"));
        row(table, "claim.opened", words.moment(claim.openedAt()));
        paper.table(table);
        steps(paper, claim);
        asked(paper, claim);
        claim.decision().ifPresent(decision -> decision(paper, claim, decision));
        material.dossier().basisChange().ifPresent(other -> other(paper, other));
    }

    private void steps(PdfDocument paper, Claim claim) {
        Table table = new Table(
                Table.text(words.say("claim.step.at"), 2.2f),
                Table.text(words.say("claim.step.who"), 1.6f),
                Table.text(words.say("claim.step.what"), 2.2f),
                Table.text(words.say("claim.step.why"), 4));
        for (ClaimStep step : claim.steps()) {
            table.row(
                    TableCell.of(words.moment(step.at()), TextStyle.SMALL),
                    TableCell.of(step.by(), TextStyle.SMALL),
                    TableCell.of(
                            (step.from() == step.to() && step.action().decides()
                                            ? words.say("claim.step.proposed") + " "
                                            : "")
                                    + words.of("claim-step", step.action().id()),
                            TextStyle.SMALL),
                    TableCell.of(Optional.ofNullable(step.reason()).orElse(""), TextStyle.SMALL));
        }
        if (!table.isEmpty()) {
            paper.subheading(TableCell.of(words.say("claim.steps"), TextStyle.SUBHEADING));
            paper.table(table);
        }
    }

    private void asked(PdfDocument paper, Claim claim) {
        if (claim.requestedItems().isEmpty()) {
            return;
        }
        paper.subheading(TableCell.of(words.say("claim.awaited"), TextStyle.SUBHEADING));
        Table table = new Table(
                Table.text(words.say("fact.claim.item"), 4),
                Table.text(words.say("report.answered"), 2),
                Table.text(words.say("fact.claim.words"), 4));
        for (RequestedItem item : claim.requestedItems()) {
            table.row(
                    TableCell.of(name(item), TextStyle.SMALL_STRONG),
                    TableCell.of(
                            words.say(item.answered() ? "claim.awaited.here" : "claim.awaited.not"), TextStyle.SMALL),
                    TableCell.of(String.join("; ", item.words()), TextStyle.SMALL));
        }
        paper.table(table);
    }

    private String name(RequestedItem item) {
        if (item.id() == null) {
            return item.text();
        }
        return words.knows("kind", item.id()) ? words.of("kind", item.id()) : words.of("fact", item.id());
    }

    private void decision(PdfDocument paper, Claim claim, ClaimDecision decision) {
        paper.subheading(TableCell.of(
                words.say("claim.decision") + ": "
                        + words.of("claim-state", decision.kind().id()),
                TextStyle.SUBHEADING));
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
                TableCell.of(words.say("fact.claim.assessment"), TextStyle.SMALL_STRONG),
                TableCell.of(decision.assessmentSha256().hex(), TextStyle.MONO));
        if (!claim.warranty().said().isEmpty()) {
            row(table, "letter.terms", String.join(" ", claim.warranty().said()));
        }
        paper.table(table);
        if (decision.againstLeaning()) {
            paper.text(TableCell.of(words.say("claim.decision.against"), TextStyle.STRONG));
        }
    }

    private void other(PdfDocument paper, DecisionBasisChange other) {
        paper.text(TableCell.of(words.say("claim.decision.other"), TextStyle.STRONG));
        paper.list(new DecisionBasisText(words, material.dossier()).lines(other), false);
    }

    private void row(Table table, String label, String value) {
        table.row(TableCell.of(words.say(label), TextStyle.SMALL_STRONG), TableCell.of(value, TextStyle.SMALL));
    }
}
