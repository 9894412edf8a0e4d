package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** Decisions above the limit: proposed by one, confirmed or refused by another, and never by the same. */
@ServerTest
class SecondPersonTest {

    /** Nobody else's tests claim in it, so its limit bothers none of them. */
    private static final String CURRENCY = "NOK";

    private static final String REASON =
            "{\"reason\":\"The workshop measured twice and showed us both sheets at the counter.\"";

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    private Client workshop;
    private Server.User clerk;
    private Client first;
    private Client second;
    private SentCase sent;

    @BeforeEach
    void claimInReviewAboveALimitOf500() {
        limit("500");
        workshop = server.as(server.newUser(Role.WORKSHOP));
        clerk = server.newUser(Role.CLERK);
        first = server.as(clerk);
        second = server.as(Role.ADMIN);
        sent = SentCase.open(workshop);
        workshop.postJson(sent.api() + "/claim", "{\"amount\":\"900\",\"currency\":\"" + CURRENCY + "\"}");
        assertThat(step(workshop, "submit", "{}").status()).isEqualTo(200);
        assertThat(step(first, "take", "{}").status()).isEqualTo(200);
    }

    private void limit(String amount) {
        Answer set = server.as(Role.ADMIN)
                .send(
                        "PUT",
                        "/api/v1/claim-limits/" + CURRENCY,
                        BodyPublishers.ofString("{\"amount\":\"" + amount + "\",\"reason\":\"for a test\"}"),
                        "application/json");
        assertThat(set.status()).as(set.toString()).isEqualTo(200);
    }

    private Answer step(Client client, String action, String body) {
        return client.postJson(sent.api() + "/claim/" + action, body);
    }

    private Answer propose() {
        Answer proposed = step(first, "approve", REASON + "}");
        assertThat(proposed.status()).as(proposed.toString()).isEqualTo(202);
        return proposed;
    }

    private JsonNode claim(Client client) {
        return client.get(sent.api()).json().get("claim");
    }

    private static List<String> allowed(JsonNode claim) {
        return claim.get("allowedActions")
                .valueStream()
                .map(JsonNode::stringValue)
                .toList();
    }

    @Test
    void aProposalWaitsInReviewAndAnotherPersonMakesItGood() {
        JsonNode waits = propose().json();
        assertThat(waits.get("state").stringValue()).isEqualTo("in-review");
        assertThat(waits.has("decision")).isFalse();
        assertThat(waits.at("/proposal/kind").stringValue()).isEqualTo("approved");
        assertThat(waits.at("/proposal/amount").stringValue()).isEqualTo("900.00");
        assertThat(waits.at("/proposal/limit").stringValue()).isEqualTo("500.00");
        assertThat(waits.at("/proposal/proposedBy").stringValue()).isEqualTo(clerk.name());
        assertThat(allowed(waits)).containsExactly("ask");
        assertThat(allowed(claim(second))).containsExactly("ask", "confirm", "refuse");

        for (String action : List.of("confirm", "refuse")) {
            Answer own = step(first, action, REASON + "}");
            assertThat(own.status()).as(own.toString()).isEqualTo(403);
            assertThat(own.json().get("type").stringValue()).endsWith("#claim-second-person");
        }
        limit("100000"); // later limits change nothing for what waits
        JsonNode decided = step(second, "confirm", "{}").json();
        assertThat(decided.get("state").stringValue()).isEqualTo("approved");
        assertThat(decided.has("proposal")).isFalse();
        JsonNode decision = decided.get("decision");
        assertThat(decision.get("amount").stringValue()).isEqualTo("900.00");
        assertThat(decision.get("limit").stringValue()).isEqualTo("500.00");
        assertThat(decision.get("decidedBy").stringValue()).isEqualTo(clerk.name());
        assertThat(decision.get("confirmedBy").stringValue())
                .isEqualTo(server.user(Role.ADMIN).name());
        assertThat(decision.get("proposedAt")).isEqualTo(waits.at("/proposal/proposedAt"));
        assertThat(decision.get("assessment")).isEqualTo(waits.at("/proposal/assessment"));
        assertThat(decision.get("reason")).isEqualTo(waits.at("/proposal/reason"));
    }

    @Test
    void theWorkshopHearsOfItOnlyWhenItStands() {
        propose();
        step(second, "refuse", "{\"reason\":\"Half will do.\"}");
        propose();
        assertThat(workshop.get(sent.api()).text()).doesNotContain("proposal");
        assertThat(claim(workshop).get("steps").size()).isEqualTo(2);
        String page = workshop.get(sent.api() + "/bag.zip").text();
        assertThat(page).doesNotContain("claim-propose");
        assertThat(claim(second).get("steps").size()).isEqualTo(5);
        step(second, "confirm", "{}");
        assertThat(claim(workshop).get("state").stringValue()).isEqualTo("approved");
    }

    @Test
    void aRefusalSaysWhyAndOpensTheWayForAnotherDecision() {
        propose();
        Answer bare = step(second, "refuse", "{}");
        assertThat(bare.status()).isEqualTo(400);
        assertThat(bare.json().at("/errors/0/field").stringValue()).isEqualTo("reason");
        JsonNode refused =
                step(second, "refuse", "{\"reason\":\"Half will do.\"}").json();
        assertThat(refused.get("state").stringValue()).isEqualTo("in-review");
        assertThat(refused.has("proposal")).isFalse();
        assertThat(step(second, "confirm", "{}").status()).isEqualTo(409);
        Answer lower = step(first, "goodwill", REASON + ",\"amount\":\"500\"}");
        assertThat(lower.status()).as("the limit itself needs nobody else").isEqualTo(200);
        assertThat(lower.json().at("/decision/limit").stringValue()).isEqualTo("500.00");
        assertThat(lower.json().at("/decision").has("confirmedBy")).isFalse();
    }

    @Test
    void whatDoesNotGoWhileAProposalWaits() {
        propose();
        for (String action : List.of("approve", "decline", "goodwill", "take", "settle")) {
            Answer refused = step(second, action, REASON + "}");
            assertThat(refused.status()).as(action + " " + refused).isEqualTo(409);
            assertThat(refused.json().get("allowedActions").toString())
                    .isEqualTo("[\"ask\",\"confirm\",\"refuse\",\"withdraw\"]");
        }
        assertThat(step(workshop, "confirm", "{}").status()).isEqualTo(403);
        assertThat(step(server.as(Role.AUDITOR), "confirm", "{}").status()).isEqualTo(403);
        assertThat(step(second, "ask", "{\"items\":[\"charging-test\"]}").status())
                .isEqualTo(200);
        assertThat(claim(second).has("proposal"))
                .as("asking for more ends the proposal")
                .isFalse();
        step(workshop, "answer", "{}");
        propose();
        assertThat(step(workshop, "withdraw", "{}").status()).isEqualTo(200);
        assertThat(step(second, "confirm", "{}").status()).isEqualTo(409);
    }

    @Test
    void aProposalIsNotConfirmedOnOtherGroundsThanItWasMadeOn() {
        propose();
        sent.send(
                workshop,
                "late.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,\"temperatureC\":18}"
                        .getBytes(StandardCharsets.UTF_8),
                null);
        Answer stale = step(second, "confirm", "{}");
        assertThat(stale.status()).as(stale.toString()).isIn(409, 412);
        assertThat(stale.json().get("type").stringValue()).endsWith("#changed-since-read");
        assertThat(claim(second).get("state").stringValue()).isEqualTo("in-review");
        assertThat(step(second, "refuse", "{\"reason\":\"New evidence came.\"}").status())
                .isEqualTo(200);
        propose();
        assertThat(step(second, "confirm", "{}").status()).isEqualTo(200);
    }

    @Test
    void ofTwoWhoConfirmAtOnceOneDoesAndThereIsOneDecision() throws Exception {
        List<Client> people = List.of(server.as(server.newUser(Role.CLERK)), server.as(server.newUser(Role.ADMIN)));
        List<String> ways = List.of("confirm", "refuse");
        ExecutorService both = Executors.newFixedThreadPool(2);
        try {
            for (int round = 0; round < 4; round++) {
                claimInReviewAboveALimitOf500();
                propose();
                CountDownLatch start = new CountDownLatch(1);
                List<Future<Integer>> answers = new ArrayList<>();
                for (int i = 0; i < 2; i++) {
                    Client client = people.get(i);
                    String way = ways.get(round < 2 ? 0 : i);
                    Callable<Integer> act = () -> {
                        start.await();
                        return step(client, way, "{\"reason\":\"At once.\"}").status();
                    };
                    answers.add(both.submit(act));
                }
                start.countDown();
                assertThat(List.of(answers.get(0).get(), answers.get(1).get())).containsExactlyInAnyOrder(200, 409);
                JsonNode after = claim(second);
                assertThat(after.get("steps").size()).isEqualTo(4);
                assertThat(after.has("decision"))
                        .isEqualTo(after.get("state").stringValue().equals("approved"));
            }
        } finally {
            both.shutdownNow();
        }
    }

    @Test
    void theDatabaseItselfWantsTheSecondPerson() {
        propose();
        step(second, "confirm", "{}");
        String id = db.sql("select c.id::text from claim c join case_file f on f.id = c.case_id where f.number = ?")
                .param(sent.number())
                .query(String.class)
                .single();
        for (String change : List.of(
                "update claim_proposal set amount = 501 where claim_id = '" + id + "'",
                "delete from claim_limit",
                "update claim_limit set amount = 1000000")) {
            assertThatThrownBy(() -> db.sql(change).update()).as(change).hasStackTraceContaining("permission denied");
        }
        String columns =
                "version, kind, amount, reason, decided_at, decided_by, assessment_id, assessment_sha256, edition,"
                        + " leaning, against_leaning, limit_amount";
        for (String second : List.of("null, null", "decided_at, decided_by")) {
            assertThatThrownBy(() -> db.sql("insert into claim_decision (claim_id, " + columns
                                    + ", proposed_at, confirmed_by) select gen_random_uuid(), " + columns + ", "
                                    + second
                                    + " from claim_decision where claim_id = '" + id + "'")
                            .update())
                    .hasMessageContaining("claim_decision_second_person");
        }
    }

    @Test
    void limitsAreReadByTheDistributorAndSetByAnAdministratorWithAReason() {
        assertThat(first.get("/api/v1/claim-limits").text()).contains("\"" + CURRENCY + "\"", "\"500.00\"");
        assertThat(workshop.get("/api/v1/claim-limits").status()).isEqualTo(403);
        for (String body : List.of(
                "{\"amount\":\"5\"}",
                "{\"amount\":\"-5\",\"reason\":\"why\"}",
                "{\"amount\":\"5.001\",\"reason\":\"why\"}")) {
            assertThat(server.as(Role.ADMIN)
                            .send(
                                    "PUT",
                                    "/api/v1/claim-limits/" + CURRENCY,
                                    BodyPublishers.ofString(body),
                                    "application/json")
                            .status())
                    .as(body)
                    .isEqualTo(400);
        }
        limit("");
        assertThat(first.get("/api/v1/claim-limits").text()).doesNotContain(CURRENCY);
        assertThat(step(first, "approve", REASON + "}").status())
                .as("no limit, nobody else needed")
                .isEqualTo(200);
    }
}
