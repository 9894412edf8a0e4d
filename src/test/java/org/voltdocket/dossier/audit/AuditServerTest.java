package org.voltdocket.dossier.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.insight.TestAgreementService;
import org.voltdocket.insight.TestAgreementService.Instrument;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.recovery.RecoveryService;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** What the bench means for decisions, told over HTTP from the claim to the list of what may be had back. */
@ServerTest
class AuditServerTest {

    @Autowired
    private Server server;

    @Autowired
    private DecisionReviewService reviews;

    @Autowired
    private RecoveryService recovery;

    @Autowired
    private TestAgreementService agreement;

    private static String serial() {
        return "AUD-" + UUID.randomUUID().toString().substring(0, 13).toUpperCase(Locale.ROOT);
    }

    private static byte[] test(String at, double amperes, String instrument) {
        return ("{\"kind\":\"battery-test\",\"takenAt\":\"" + at + "\",\"restVoltageV\":12.70,\"temperatureC\":25,"
                        + "\"crankingCurrentA\":" + amperes
                        + ",\"crankingStandard\":\"EN\",\"hoursSinceEngineStop\":48,"
                        + "\"chargedBefore\":true,\"instrument\":{\"serial\":\"" + instrument + "\"}}")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** A case with a test of the workshop; answers its number. */
    private String open(Server.User workshop, String serial, double amperes, String instrument) {
        Client own = server.as(workshop);
        String number = own.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + serial
                                + "\",\"vin\":\"WP0ZZZ99ZTS392124\",\"battery\":{\"chemistry\":"
                                + "\"flooded\",\"capacityAh\":70,\"ratedCrankingA\":700,\"crankingStandard\":\"EN\"}}")
                .json()
                .get("number")
                .asString();
        assertThat(own.upload(
                                "/api/v1/cases/" + number + "/evidence",
                                "own.json",
                                test("2026-03-01T08:00:00Z", amperes, instrument),
                                null)
                        .status())
                .isEqualTo(201);
        return number;
    }

    private String claim(Server.User workshop, String number, String decision) {
        String at = "/api/v1/cases/" + number + "/claim";
        assertThat(server.as(workshop)
                        .postJson(at, "{\"amount\":\"129.90\",\"currency\":\"EUR\"}")
                        .status())
                .isEqualTo(201);
        assertThat(server.as(workshop).postJson(at + "/submit", "{}").status()).isEqualTo(200);
        assertThat(server.as(Role.CLERK).postJson(at + "/take", "{}").status()).isEqualTo(200);
        Answer decided = server.as(Role.CLERK)
                .postJson(
                        at + "/" + decision,
                        "{\"reason\":\"Decided so for a test, although the evidence may lean another way.\"}");
        assertThat(decided.status()).as(decided.toString()).isEqualTo(200);
        return number;
    }

    private void conclude(String serial, String outcome) {
        Client auditor = server.as(Role.AUDITOR);
        String id = auditor.postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial + "\"}")
                .json()
                .get("id")
                .asString();
        assertThat(auditor.postJson(
                                "/api/v1/returns/" + id + "/outcome",
                                "{\"outcome\":\"" + outcome + "\",\"reason\":\"as measured\"}")
                        .status())
                .isEqualTo(200);
    }

    private DecisionReviewService.ReviewItem of(String number) {
        return reviews.all(server.user(Role.CLERK).actor()).stream()
                .filter(one -> one.caseNumber().equals(number))
                .findFirst()
                .orElse(null);
    }

    @Test
    void aDecisionThatTheBenchSpeaksAgainstWaitsForAPersonAndStaysAsItIs() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        String serial = serial();
        String number = claim(workshop, open(workshop, serial, 700, "T-9"), "approve");
        assertThat(of(number)).isNull();
        conclude(serial, "no-fault-found");
        DecisionReviewService.ReviewItem again = of(number);
        assertThat(again.review()).isEmpty();
        Client page = server.browser(server.user(Role.CLERK));
        assertThat(page.get("/decisions/again").text()).contains(number).doesNotContain("??");
        String at = "/decisions/again/" + again.claim();
        assertThat(page.postForm(at, Map.of("stands", "true", "reason", " ")).status())
                .isEqualTo(400);
        assertThat(page.postForm(at, Map.of("stands", "true", "reason", "the strap was loose then"))
                        .status())
                .isEqualTo(302);
        assertThat(of(number).review().orElseThrow().finding()).isEqualTo("stands");
        assertThat(server.as(workshop)
                        .get("/api/v1/cases/" + number)
                        .json()
                        .at("/claim/state")
                        .asString())
                .isEqualTo("approved");

        // a corrected outcome asks anew, and one that agrees asks no more
        conclude(serial, "damaged-by-use");
        assertThat(of(number).review()).isEmpty();
        conclude(serial, "defect-confirmed");
        assertThat(of(number)).isNull();
    }

    @Test
    void whoPaysBackFollowsFromDecisionAndOutcome() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Actor clerk = server.user(Role.CLERK).actor();
        String faultless = serial();
        String defective = serial();
        String declined = serial();
        String first = claim(workshop, open(workshop, faultless, 700, "T-9"), "approve");
        String second = claim(workshop, open(workshop, defective, 700, "T-9"), "goodwill");
        String third = claim(workshop, open(workshop, declined, 700, "T-9"), "decline");
        conclude(faultless, "no-fault-found");
        conclude(defective, "defect-confirmed");
        conclude(declined, "defect-confirmed");
        assertThat(recovery.fromWorkshops(clerk))
                .filteredOn(item -> item.number().value().equals(first))
                .singleElement()
                .satisfies(item -> assertThat(item.amount().text()).isEqualTo("129.90"));
        assertThat(recovery.fromWorkshops(clerk))
                .noneMatch(item -> List.of(second, third).contains(item.number().value()));
        assertThat(recovery.waiting(clerk))
                .noneMatch(item ->
                        List.of(first, second, third).contains(item.number().value()));
        assertThat(of(third).kind()).isEqualTo("declined");
        Client page = server.browser(server.user(Role.CLERK));
        assertThat(page.get("/recoveries").text()).contains(first).doesNotContain("??");
        assertThat(page.get("/recoveries/workshops.csv").text())
                .startsWith("workshop,amount")
                .contains(first);
    }

    @Test
    void anInstrumentThatReadsEightPercentLowShows() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Actor auditor = server.user(Role.AUDITOR).actor();
        String low = "LOW-" + UUID.randomUUID().toString().substring(0, 8);
        String fair = "FAIR-" + UUID.randomUUID().toString().substring(0, 8);
        double[] noise = {-1.5, 0.8, 1.4, -0.6, 0.1, -0.2};
        for (int i = 0; i < noise.length; i++) {
            bench(workshop, 600 + 25 * i, (1 - 0.08) * (1 + noise[i] / 100), low);
            bench(workshop, 600 + 25 * i, 1 + noise[i] / 100, fair);
        }
        Instrument bad = instrument(auditor, low);
        assertThat(bad.pairs()).hasSize(6);
        assertThat(bad.limits().orElseThrow().bias().value()).isCloseTo(-8, within(0.2));
        assertThat(bad.limits().orElseThrow().biased()).isTrue();
        assertThat(instrument(auditor, fair).limits().orElseThrow().biased()).isFalse();
        Client page = server.browser(server.user(Role.AUDITOR));
        assertThat(page.get("/insight/agreement?instrument=" + low).text())
                .contains(low)
                .doesNotContain("??");
        assertThat(page.get("/insight/agreement.png?instrument=" + low).header("content-type"))
                .contains("image/png");
        assertThat(page.get("/insight/agreement.csv").text()).contains(low);
        assertThat(agreement.judgements(auditor)).isNotEmpty();
    }

    private Instrument instrument(Actor auditor, String serial) {
        return agreement.instruments(auditor).stream()
                .filter(one -> one.serial().equals(serial))
                .findFirst()
                .orElseThrow();
    }

    private void bench(Server.User workshop, double truth, double factor, String instrument) {
        String serial = serial();
        open(workshop, serial, truth * factor, instrument);
        Client auditor = server.as(Role.AUDITOR);
        String id = auditor.postJson("/api/v1/returns", "{\"batterySerial\":\"" + serial + "\"}")
                .json()
                .get("id")
                .asString();
        assertThat(auditor.upload(
                                "/api/v1/returns/" + id + "/evidence",
                                "bench.json",
                                test("2026-03-09T08:00:00Z", truth, "BENCH-1"),
                                null)
                        .status())
                .isEqualTo(201);
        auditor.postJson("/api/v1/returns/" + id + "/outcome", "{\"outcome\":\"no-fault-found\",\"reason\":\"sound\"}");
    }
}
