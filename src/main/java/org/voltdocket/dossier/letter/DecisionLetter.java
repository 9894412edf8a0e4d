package org.voltdocket.dossier.letter;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.Cell;
import org.voltdocket.paper.Imprint;
import org.voltdocket.paper.Paper;
import org.voltdocket.paper.Style;
import org.voltdocket.paper.Table;
import org.voltdocket.trail.TrailEntry;
import org.voltdocket.ui.Words;

/** Prints the letter of a decision. The same dossier gives the same bytes: no clock, no chance. */
@Component
public class DecisionLetter {

    /** Height that the lines on the terms need at least, points: their title stands alone at no foot. */
    private static final float WORKED = 70;

    private final Words words;
    private final LetterHead head;

    DecisionLetter(Words words, LetterHead head) {
        this.words = words;
        this.head = head;
    }

    /**
     * A whole letter as PDF.
     *
     * @param dossier of a case whose claim is decided on its latest assessment
     * @param report digest of the report that goes with it
     */
    public byte[] of(Dossier dossier, Sha256 report) {
        Claim claim = dossier.claim().orElseThrow();
        ClaimDecision decision = claim.decision().orElseThrow();
        KeptAssessment kept = dossier.assessment()
                .filter(latest -> latest.id().equals(decision.assessment()))
                .orElseThrow(() -> new IllegalStateException("the decision rests on another assessment"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Paper paper = Paper.open(out, imprint(dossier, claim, decision, report))) {
            opening(paper, dossier, claim, decision);
            new FoundPart(words, kept.assessment())
                    .print(paper, decision.evidence().size());
            paid(paper, claim, decision);
            objection(paper, dossier.file().ref(), decision);
            rests(paper, dossier, decision, kept, report);
        }
        return out.toByteArray();
    }

    private Imprint imprint(Dossier dossier, Claim claim, ClaimDecision decision, Sha256 report) {
        CaseRef ref = dossier.file().ref();
        String identity = claim.id() + " " + claim.version() + " " + decision + " "
                + claim.warranty().said() + " "
                + dossier.file().version() + " " + dossier.workshopNames() + " " + report + " " + head.sender()
                + head.contact() + head.days();
        return new Imprint(
                words.say("letter.title", ref.number().value()),
                words.say("letter.subject", ref.serial().value()),
                head.sender(),
                words.say("letter.foot", ref.number().value(), words.moment(decision.at())),
                "en",
                decision.at(),
                Sha256.of(identity.getBytes(StandardCharsets.UTF_8)));
    }

    private void opening(Paper paper, Dossier dossier, Claim claim, ClaimDecision decision) {
        CaseRef ref = dossier.file().ref();
        paper.title(
                words.say("letter.title", ref.number().value()),
                Cell.of(words.say("letter.to") + " ", Style.BODY)
                        .then(dossier.workshopNames().getOrDefault(claim.workshop(), "–"), Style.STRONG)
                        .then(" · " + day(LocalDate.ofInstant(decision.at(), ZoneOffset.UTC)), Style.BODY));
        paper.text(Cell.of(words.say("letter.about", claim.asked(), handedIn(claim)) + " ", Style.BODY)
                .then(ref.serial().value(), Style.MONO_LARGE)
                .then(" " + words.say("letter.in") + " ", Style.BODY)
                .then(ref.vin().value(), Style.MONO_LARGE)
                .then(".", Style.BODY));
        paper.box(List.of(
                Cell.of(words.say("letter.lead." + decision.kind().id(), decision.paid()), Style.LEAD),
                Cell.of(words.say("letter.because") + " ", Style.STRONG).then(decision.reason(), Style.BODY)));
        if (decision.againstLeaning()) {
            paper.text(Cell.of(
                    words.say(
                            "letter.against",
                            words.of("leaning", decision.leaning().id())),
                    Style.BODY));
        }
    }

    private String handedIn(Claim claim) {
        return claim.steps().stream()
                .filter(step -> step.action() == ClaimAction.SUBMIT)
                .map(ClaimStep::at)
                .findFirst()
                .map(at -> day(LocalDate.ofInstant(at, ZoneOffset.UTC)))
                .orElse("–");
    }

    private void paid(Paper paper, Claim claim, ClaimDecision decision) {
        paper.heading(words.say("letter.paid"));
        Table table = new Table(Table.text("", 6), Table.number("", 3));
        table.row(
                Cell.of(words.say("claim.asked"), Style.BODY),
                Cell.of(claim.asked().toString(), Style.BODY));
        if (claim.warranty().reckoned()) {
            table.row(
                    Cell.of(words.say("letter.terms"), Style.BODY),
                    Cell.of(claim.warranty().due() + " " + claim.asked().code(), Style.BODY));
        }
        table.row(
                Cell.of(words.say("letter.paid.sum"), Style.STRONG),
                Cell.of(decision.paid().toString(), Style.STRONG));
        paper.table(table);
        if (!claim.warranty().said().isEmpty()) {
            paper.keep(WORKED);
            paper.text(Cell.of(words.say("letter.terms.worked"), Style.STRONG));
            paper.list(claim.warranty().said(), false);
        }
        if (decision.kind() == ClaimState.GOODWILL) {
            paper.text(Cell.of(words.say("letter.goodwill"), Style.BODY));
        }
    }

    private void objection(Paper paper, CaseRef ref, ClaimDecision decision) {
        LocalDate until = LocalDate.ofInstant(decision.at(), ZoneOffset.UTC).plusDays(head.days());
        paper.heading(words.say("letter.object"));
        paper.text(Cell.of(words.say("letter.object.until", day(until), head.days(), head.contact()), Style.BODY));
        paper.list(
                List.of(
                        words.say("letter.object.number", ref.number().value()),
                        words.say("letter.object.what"),
                        words.say("letter.object.evidence")),
                false);
        paper.text(Cell.of(words.say("letter.object.law"), Style.BODY));
    }

    private void rests(Paper paper, Dossier dossier, ClaimDecision decision, KeptAssessment kept, Sha256 report) {
        paper.heading(words.say("letter.rests"));
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "letter.decided", decided(decision), Style.SMALL);
        row(
                table,
                "report.edition",
                words.say("letter.judged", decision.edition(), words.moment(kept.assessedAt())),
                Style.SMALL);
        row(table, "fact.claim.assessment", decision.assessmentSha256().hex(), Style.MONO);
        row(table, "letter.report", report.hex(), Style.MONO);
        List<TrailEntry> trail = dossier.trail();
        if (!trail.isEmpty()) {
            TrailEntry last = trail.get(trail.size() - 1);
            row(table, "letter.trail", last.position() + "  " + last.hash().hex(), Style.MONO);
        }
        paper.table(table);
        paper.text(
                Cell.of(words.say("letter.rests.evidence", decision.evidence().size()), Style.SMALL));
    }

    private String decided(ClaimDecision decision) {
        String first = words.say("letter.decided.by", decision.by(), words.moment(decision.at()));
        return decision.confirmation()
                .map(second -> first + "; " + words.say("letter.decided.second", second.by()))
                .orElse(first);
    }

    private void row(Table table, String label, String value, Style style) {
        table.row(Cell.of(words.say(label), Style.SMALL_STRONG), Cell.of(value, style));
    }

    private String day(LocalDate day) {
        return words.day(day);
    }
}
