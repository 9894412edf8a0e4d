package org.voltdocket.dossier.letter;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.DocumentMetadata;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.Table;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.trail.TrailEntry;
import org.voltdocket.ui.TextFormatter;

/** Prints the decision letter. The same dossier gives the same bytes. */
@Component
public class DecisionLetter {

    /** Space that the title of the terms and the first lines need on a page, points. */
    private static final float WORKED = 70;

    private final TextFormatter words;
    private final Letterhead head;

    DecisionLetter(TextFormatter words, Letterhead head) {
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
        StoredAssessment kept = dossier.assessment()
                .filter(latest -> latest.id().equals(decision.assessment()))
                .orElseThrow(() -> new IllegalStateException("the decision rests on another assessment"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PdfDocument paper = PdfDocument.open(out, imprint(dossier, claim, decision, report))) {
            opening(paper, dossier, claim, decision);
            new FindingsSection(words, kept.assessment())
                    .print(paper, decision.evidence().size());
            paid(paper, claim, decision);
            objection(paper, dossier.file().ref(), decision);
            rests(paper, dossier, decision, kept, report);
        }
        return out.toByteArray();
    }

    private DocumentMetadata imprint(Dossier dossier, Claim claim, ClaimDecision decision, Sha256 report) {
        CaseReference ref = dossier.file().ref();
        String identity = claim.id() + " " + claim.version() + " " + decision + " "
                + claim.warranty().said() + " "
                + dossier.file().version() + " " + dossier.workshopNames() + " " + report + " " + head.sender()
                + head.contact() + head.days();
        return new DocumentMetadata(
                words.say("letter.title", ref.number().value()),
                words.say("letter.subject", ref.serial().value()),
                head.sender(),
                words.say("letter.foot", ref.number().value(), words.moment(decision.at())),
                "en",
                decision.at(),
                Sha256.of(identity.getBytes(StandardCharsets.UTF_8)));
    }

    private void opening(PdfDocument paper, Dossier dossier, Claim claim, ClaimDecision decision) {
        CaseReference ref = dossier.file().ref();
        paper.title(
                words.say("letter.title", ref.number().value()),
                TableCell.of(words.say("letter.to") + " ", TextStyle.BODY)
                        .then(dossier.workshopNames().getOrDefault(claim.workshop(), "–"), TextStyle.STRONG)
                        .then(" · " + day(LocalDate.ofInstant(decision.at(), ZoneOffset.UTC)), TextStyle.BODY));
        paper.text(TableCell.of(words.say("letter.about", claim.amount(), handedIn(claim)) + " ", TextStyle.BODY)
                .then(ref.serial().value(), TextStyle.MONO_LARGE)
                .then(" " + words.say("letter.in") + " ", TextStyle.BODY)
                .then(ref.vin().value(), TextStyle.MONO_LARGE)
                .then(".", TextStyle.BODY));
        paper.box(List.of(
                TableCell.of(words.say("letter.lead." + decision.kind().id(), decision.paid()), TextStyle.LEAD),
                TableCell.of(words.say("letter.because") + " ", TextStyle.STRONG)
                        .then(decision.reason(), TextStyle.BODY)));
        if (decision.againstLeaning()) {
            paper.text(TableCell.of(
                    words.say(
                            "letter.against",
                            words.of("leaning", decision.leaning().id())),
                    TextStyle.BODY));
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

    private void paid(PdfDocument paper, Claim claim, ClaimDecision decision) {
        paper.heading(words.say("letter.paid"));
        Table table = new Table(Table.text("", 6), Table.number("", 3));
        table.row(
                TableCell.of(words.say("claim.amount-claimed"), TextStyle.BODY),
                TableCell.of(claim.amount().toString(), TextStyle.BODY));
        if (claim.warranty().hasAmount()) {
            table.row(
                    TableCell.of(words.say("letter.terms"), TextStyle.BODY),
                    TableCell.of(claim.warranty().due() + " " + claim.amount().code(), TextStyle.BODY));
        }
        table.row(
                TableCell.of(words.say("letter.paid.sum"), TextStyle.STRONG),
                TableCell.of(decision.paid().toString(), TextStyle.STRONG));
        paper.table(table);
        if (!claim.warranty().said().isEmpty()) {
            paper.keep(WORKED);
            paper.text(TableCell.of(words.say("letter.terms.worked"), TextStyle.STRONG));
            paper.list(claim.warranty().said(), false);
        }
        if (decision.kind() == ClaimState.GOODWILL) {
            paper.text(TableCell.of(words.say("letter.goodwill"), TextStyle.BODY));
        }
    }

    private void objection(PdfDocument paper, CaseReference ref, ClaimDecision decision) {
        LocalDate until = LocalDate.ofInstant(decision.at(), ZoneOffset.UTC).plusDays(head.days());
        paper.heading(words.say("letter.object"));
        paper.text(TableCell.of(
                words.say("letter.object.until", day(until), head.days(), head.contact()), TextStyle.BODY));
        paper.list(
                List.of(
                        words.say("letter.object.number", ref.number().value()),
                        words.say("letter.object.what"),
                        words.say("letter.object.evidence")),
                false);
        paper.text(TableCell.of(words.say("letter.object.law"), TextStyle.BODY));
    }

    private void rests(
            PdfDocument paper, Dossier dossier, ClaimDecision decision, StoredAssessment kept, Sha256 report) {
        paper.heading(words.say("letter.rests"));
        Table table = new Table(Table.text("", 3), Table.text("", 7));
        row(table, "letter.decided", decided(decision), TextStyle.SMALL);
        row(
                table,
                "report.edition",
                words.say("letter.judged", decision.edition(), words.moment(kept.assessedAt())),
                TextStyle.SMALL);
        row(table, "fact.claim.assessment", decision.assessmentSha256().hex(), TextStyle.MONO);
        row(table, "letter.report", report.hex(), TextStyle.MONO);
        List<TrailEntry> trail = dossier.trail();
        if (!trail.isEmpty()) {
            TrailEntry last = trail.get(trail.size() - 1);
            row(table, "letter.trail", last.position() + "  " + last.hash().hex(), TextStyle.MONO);
        }
        paper.table(table);
        paper.text(TableCell.of(
                words.say("letter.rests.evidence", decision.evidence().size()), TextStyle.SMALL));
    }

    private String decided(ClaimDecision decision) {
        String first = words.say("letter.decided.by", decision.by(), words.moment(decision.at()));
        return decision.confirmation()
                .map(second -> first + "; " + words.say("letter.decided.second", second.by()))
                .orElse(first);
    }

    private void row(Table table, String label, String value, TextStyle style) {
        table.row(TableCell.of(words.say(label), TextStyle.SMALL_STRONG), TableCell.of(value, style));
    }

    private String day(LocalDate day) {
        return words.day(day);
    }
}
