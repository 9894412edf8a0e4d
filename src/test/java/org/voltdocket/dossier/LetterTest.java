package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.demo.Scenario;
import org.voltdocket.dossier.letter.DecisionLetter;
import org.voltdocket.dossier.report.CaseReport;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.PrintedText;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.ui.TextFormatter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads letters back by another library and checks them against the assessment that was frozen with the decision. */
@ServerTest
class LetterTest {

    private static final String REASON = "The sensor was measured twice against the clamp; the battery passed.";

    @Autowired
    private Server server;

    @Autowired
    private TextFormatter words;

    @Autowired
    private JdbcClient db;

    @Autowired
    private DossierService dossiers;

    @Autowired
    private DecisionLetter letters;

    @Autowired
    private CaseReport reports;

    private Server.User owner;
    private Client workshop;
    private Client clerk;
    private SentCase sent;
    private JsonNode decision;

    @BeforeEach
    void declined() {
        owner = server.newUser(Role.WORKSHOP);
        workshop = server.as(owner);
        clerk = server.as(Role.CLERK);
        sent = SentCase.of(workshop, Scenario.SENSOR_READS_HIGH, 189);
        workshop.postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        for (String step : List.of("submit", "take", "decline")) {
            Answer answer = (step.equals("submit") ? workshop : clerk)
                    .postJson(sent.api() + "/claim/" + step, "{\"reason\":\"" + REASON + "\"}");
            assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
            decision = answer.json().get("decision");
        }
    }

    private byte[] paper(Client client, String kind) {
        Answer answer = client.get(decision.get(kind).stringValue());
        assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
        assertThat(answer.header("content-type")).hasValue("application/pdf");
        String digest = Sha256.of(answer.body()).hex();
        assertThat(decision.get(kind + "Sha256").stringValue()).isEqualTo(digest);
        assertThat(answer.header("etag")).hasValue("\"" + digest + "\"");
        return answer.body();
    }

    private JsonNode frozen() {
        Answer kept = workshop.get(sent.api() + "/claims/1/assessment");
        assertThat(Sha256.of(kept.body()).hex())
                .isEqualTo(decision.at("/assessment/sha256").stringValue());
        return kept.json();
    }

    @Test
    void tellsWhatTheFrozenAssessmentSays() throws IOException {
        JsonNode assessment = frozen();
        String text = PrintedText.bare(PrintedText.of(paper(workshop, "letter")));
        assertThat(text).contains(bare(assessment.get("said").stringValue()));
        for (JsonNode step : assessment.get("nextSteps")) {
            assertThat(text).contains(bare(step.stringValue()));
        }
        JsonNode first = assessment.at("/causes/0");
        assertThat(text)
                .contains(bare(words.of("cause-name", first.get("cause").stringValue())))
                .contains(bare(words.percent(first.get("probability").doubleValue())))
                .contains(bare(words.of(
                        "battery-reason-means", assessment.get("batteryReason").stringValue())))
                .contains(
                        bare(words.of("leaning-means", assessment.get("leaning").stringValue())));
        String heaviest = first.at("/weights/0/finding").stringValue();
        List<String> said = assessment
                .get("findings")
                .valueStream()
                .filter(finding -> finding.get("id").stringValue().equals(heaviest))
                .map(finding -> finding.get("said").stringValue())
                .toList();
        assertThat(said).isNotEmpty().allMatch(sentence -> text.contains(bare(sentence)));
        for (String caution : List.of("engine", "gas", "acid", "short", "damaged", "law")) {
            assertThat(text).contains(bare(words.of("caution", caution)));
        }
    }

    @Test
    void tellsTheDecisionTheSumAndHowToObject() throws IOException {
        String text = PrintedText.bare(PrintedText.of(paper(workshop, "letter")));
        LocalDate decided = OffsetDateTime.parse(decision.get("decidedAt").stringValue())
                .atZoneSameInstant(ZoneOffset.UTC)
                .toLocalDate();
        DateTimeFormatter day = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
        JsonNode told = workshop.get(sent.api()).json();
        assertThat(text)
                .contains(bare("We do not accept your claim"))
                .contains(bare(REASON))
                .contains(bare("129.90 EUR"), bare("0.00 EUR"))
                .contains(bare("You may object until " + decided.plusDays(30).format(day)))
                .contains(bare(sent.number()))
                .contains(bare(told.get("batterySerial").stringValue()))
                .contains(told.get("vin").stringValue())
                .contains(bare(told.at("/workshops/0/name").stringValue()))
                .contains(decision.at("/assessment/sha256").stringValue())
                .contains(decision.get("reportSha256").stringValue())
                .contains(bare("Page 1 of"));
        for (JsonNode step : told.at("/claim/warranty/said")) {
            assertThat(text).contains(bare(step.stringValue()));
        }
    }

    @Test
    void theReportOfTheDecisionHoldsItWithEveryDigest() throws IOException {
        String text = PrintedText.bare(PrintedText.of(paper(workshop, "report")));
        assertThat(text).contains(bare("Decision: declined"), bare(REASON));
        decision.get("evidence").forEach(digest -> assertThat(text).contains(digest.stringValue()));
        assertThat(decision.get("evidence").size()).isEqualTo(sent.files().size());
        for (JsonNode finding : frozen().get("findings")) {
            assertThat(text).contains(bare(finding.get("said").stringValue()));
        }
    }

    @Test
    void bothAreWholeTaggedAndCarryTheirFonts() throws Exception {
        for (String kind : List.of("letter", "report")) {
            byte[] paper = paper(workshop, kind);
            PrintedText.check(paper);
            assertThat(PrintedText.title(paper)).contains(sent.number());
        }
    }

    @Test
    void theSameDecisionPrintsTheSameBytesAndShowsTheSameForGood() {
        byte[] letter = paper(workshop, "letter");
        byte[] report = paper(workshop, "report");
        Actor reader = new Actor("system", Role.WORKSHOP, owner.actor().workshop());
        Dossier now = dossiers.of(reader, CaseNumber.parse(sent.number()));
        // as it was when it was printed: before the trail told of the decision
        Dossier then = new Dossier(
                now.file(),
                now.relatives(),
                now.evidence(),
                now.assessment(),
                now.failure(),
                now.pendingSince(),
                now.claim(),
                now.basisChange(),
                now.trail().subList(0, now.trail().size() - 1),
                now.workshopNames());
        assertThat(reports.of(reader, then)).isEqualTo(report);
        assertThat(letters.of(then, Sha256.of(report))).isEqualTo(letter);

        workshop.patchJson(sent.api(), "{\"complaint\":\"Something else entirely.\"}");
        sent.send(
                workshop,
                "late.json",
                ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":11.2,\"temperatureC\":18,"
                                + "\"instrument\":{\"serial\":\"" + UUID.randomUUID() + "\"}}")
                        .getBytes(StandardCharsets.UTF_8),
                null);
        clerk.postJson(sent.api() + "/claim/settle", "{}");
        assertThat(paper(workshop, "letter")).isEqualTo(letter);
        assertThat(paper(clerk, "report")).isEqualTo(report);
    }

    @Test
    void laterEvidenceShowsOtherGroundsWithWhatDiffersAndReopensNothing() {
        assertThat(decision.has("basisChange")).isFalse();
        sent.send(
                workshop,
                "late.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":10.2,\"temperatureC\":18,\"hoursSinceEngineStop\":20,\"chargedBefore\":true}"
                        .getBytes(StandardCharsets.UTF_8),
                null);
        JsonNode claim = clerk.get(sent.api()).json().get("claim");
        assertThat(claim.get("state").stringValue()).isEqualTo("declined");
        assertThat(claim.at("/decision/basisChanged").booleanValue()).isTrue();
        JsonNode other = claim.at("/decision/basisChange");
        assertThat(other.get("evidence").size()).isOne();
        assertThat(other.get("findings").isEmpty()).isFalse();
        assertThat(other.get("differences")
                        .valueStream()
                        .map(one -> one.get("what").stringValue()))
                .contains("probability")
                .doesNotContain("rulebook");
        String page = server.browser(owner).get("/cases/" + sent.number()).text();
        assertThat(page).contains("basis-change", "late.json");
        assertThat(frozen().get("findings").toString()).doesNotContain("10.2");
    }

    @Test
    void thePapersAreTheClaimantsAndTheDistributors() {
        for (String kind : List.of("letter.pdf", "report.pdf", "assessment")) {
            String api = sent.api() + "/claims/1/" + kind;
            assertThat(server.as(server.newUser(Role.WORKSHOP)).get(api).status())
                    .isEqualTo(404);
            assertThat(server.anonymous().get(api).status()).isEqualTo(401);
            assertThat(server.as(Role.AUDITOR).get(api).status()).isEqualTo(200);
        }
        assertThat(server.browser(owner)
                        .get("/cases/" + sent.number() + "/claims/1/letter.pdf")
                        .status())
                .isEqualTo(200);
        String tag = "\"" + decision.get("letterSha256").stringValue() + "\"";
        assertThat(workshop.header("If-None-Match", tag)
                        .get(sent.api() + "/claims/1/letter.pdf")
                        .status())
                .isEqualTo(304);
    }

    @Test
    void theTrailNamesThePapersAndTheDatabaseKeepsThem() {
        String details = db.sql("select details from trail_entry where subject = ? and act = 'claim-decline'")
                .param(sent.number())
                .query(String.class)
                .single();
        JsonNode told = JsonMapper.shared().readTree(details);
        assertThat(told.get("claim.letter")).isEqualTo(decision.get("letterSha256"));
        assertThat(told.get("claim.report")).isEqualTo(decision.get("reportSha256"));
        assertThatThrownBy(() ->
                        db.sql("update claim_document set printed_at = now()").update())
                .hasStackTraceContaining("permission denied");
        assertThatThrownBy(() -> db.sql("delete from claim_document").update())
                .hasStackTraceContaining("permission denied");
    }

    private static String bare(String text) {
        return PrintedText.bare(text);
    }
}
