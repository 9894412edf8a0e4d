package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;
import tools.jackson.databind.JsonNode;

@ServerTest
class ClaimApiTest {

    /** Long enough where the leaning does not carry a decision. */
    private static final String REASON =
            "{\"reason\":\"The workshop measured twice and showed us both sheets at the counter.\"}";

    private static final Map<ClaimState, String> WAYS = Map.of(
            ClaimState.DRAFT, "",
            ClaimState.SUBMITTED, "submit",
            ClaimState.IN_REVIEW, "submit take",
            ClaimState.EVIDENCE_ASKED, "submit take ask",
            ClaimState.APPROVED, "submit take approve",
            ClaimState.DECLINED, "submit take decline",
            ClaimState.GOODWILL, "submit take goodwill",
            ClaimState.SETTLED, "submit take goodwill settle",
            ClaimState.WITHDRAWN, "withdraw");

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Trail trail;

    private final Map<Role, Client> people = new LinkedHashMap<>();
    private Client workshop;
    private Client clerk;

    @BeforeEach
    void people() {
        workshop = server.as(server.newUser(Role.WORKSHOP));
        clerk = server.as(Role.CLERK);
        people.put(Role.WORKSHOP, workshop);
        people.put(Role.CLERK, clerk);
        people.put(Role.AUDITOR, server.as(Role.AUDITOR));
        people.put(Role.ADMIN, server.as(Role.ADMIN));
    }

    private SentCase claimed() {
        SentCase sent = SentCase.open(workshop);
        Answer opened = workshop.postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return sent;
    }

    private SentCase claimed(String way) {
        SentCase sent = claimed();
        for (String action : way.isEmpty() ? new String[0] : way.split(" ")) {
            ClaimAction known = ClaimAction.of(action).orElseThrow();
            Answer answer = step(known.isFor(Role.WORKSHOP) ? workshop : clerk, sent, action, body(known));
            assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
        }
        return sent;
    }

    private static String body(ClaimAction action) {
        return action == ClaimAction.ASK ? "{\"items\":[\"charging-test\"]}" : REASON;
    }

    private static Answer step(Client client, SentCase sent, String action, String body) {
        return client.postJson(sent.api() + "/claim/" + action, body);
    }

    private JsonNode claim(SentCase sent) {
        return clerk.get(sent.api()).json().get("claim");
    }

    private static List<String> texts(JsonNode list) {
        List<String> texts = new ArrayList<>();
        list.forEach(text -> texts.add(text.stringValue()));
        return texts;
    }

    @Test
    void aClaimRunsFromDraftToSettledAndTheCaseShowsIt() {
        SentCase sent = claimed();
        JsonNode draft = workshop.get(sent.api()).json().get("claim");
        assertThat(draft.get("state").stringValue()).isEqualTo("draft");
        assertThat(draft.get("amount").stringValue()).isEqualTo("129.90");
        assertThat(draft.get("currency").stringValue()).isEqualTo("EUR");
        assertThat(texts(draft.get("allowedActions"))).containsExactly("submit", "withdraw");
        assertThat(claim(sent).get("allowedActions"))
                .as("nothing for the clerk yet")
                .isEmpty();

        step(workshop, sent, "submit", "{}");
        step(clerk, sent, "take", "{}");
        Answer asked = step(clerk, sent, "ask", "{\"items\":[\"charging-test\"],\"reason\":\"Loads on, please.\"}");
        assertThat(texts(asked.json().get("awaited"))).containsExactly("charging-test");
        assertThat(texts(workshop.get(sent.api()).json().at("/claim/allowedActions")))
                .containsExactly("answer", "withdraw");
        step(workshop, sent, "answer", "{\"reason\":\"Sent.\"}");
        assertThat(claim(sent).has("awaited")).isFalse();
        step(clerk, sent, "goodwill", "{\"reason\":\"A good customer.\",\"amount\":\"60.00\"}");
        Answer settled = step(clerk, sent, "settle", "{}");

        assertThat(settled.json().get("state").stringValue()).isEqualTo("settled");
        assertThat(settled.json().get("allowedActions")).isEmpty();
        assertThat(settled.json().at("/decision/amount").stringValue()).isEqualTo("60.00");
        assertThat(settled.json().get("steps").size()).isEqualTo(6);
        JsonNode second = settled.json().get("steps").get(2);
        assertThat(second.get("action").stringValue()).isEqualTo("ask");
        assertThat(second.get("from").stringValue()).isEqualTo("in-review");
        assertThat(second.get("to").stringValue()).isEqualTo("evidence-asked");
        assertThat(second.get("by").stringValue())
                .isEqualTo(server.user(Role.CLERK).name());
        assertThat(second.get("reason").stringValue()).isEqualTo("Loads on, please.");
        assertThat(clerk.get("/api/v1/cases?state=settled&q=" + sent.number()).text())
                .contains(sent.number());
        assertThat(clerk.get("/api/v1/cases?state=draft&q=" + sent.number()).text())
                .doesNotContain(sent.number());
        assertThat(clerk.get("/api/v1/cases?state=nonsense").status()).isEqualTo(400);
        assertThat(trail.of(sent.number()).stream().map(TrailEntry::act))
                .containsSubsequence(
                        "claim-opened",
                        "claim-submit",
                        "claim-take",
                        "claim-ask",
                        "claim-answer",
                        "claim-goodwill",
                        "claim-settle");
    }

    @ParameterizedTest
    @EnumSource(ClaimState.class)
    void whatAStateDoesNotAllowIsRefusedToEveryRoleAndChangesNothing(ClaimState state) {
        SentCase sent = claimed(WAYS.get(state));
        JsonNode before = claim(sent);
        assertThat(before.get("state").stringValue()).isEqualTo(state.id());
        List<String> wrong = new ArrayList<>();
        for (ClaimAction action : ClaimAction.values()) {
            people.forEach((role, client) -> {
                boolean goes = action.isFor(role)
                        && ClaimTransitions.after(state, action).isPresent();
                if (goes) {
                    return; // the runs of the other tests take these
                }
                Answer answer = step(client, sent, action.id(), body(action));
                int expected = action.isFor(role) ? 409 : 403;
                if (answer.status() != expected) {
                    wrong.add(action.id() + " as " + role + ": " + answer);
                } else if (expected == 409) {
                    assertThat(answer.json().get("type").stringValue())
                            .isEqualTo("/manual/problems#claim-step-refused");
                    assertThat(answer.json().get("state").stringValue()).isEqualTo(state.id());
                    assertThat(texts(answer.json().get("allowedActions")))
                            .containsExactlyElementsOf(ClaimTransitions.from(state).stream()
                                    .map(ClaimAction::id)
                                    .toList());
                }
            });
        }
        assertThat(wrong).isEmpty();
        assertThat(claim(sent)).isEqualTo(before);
    }

    @ParameterizedTest
    @EnumSource(ClaimState.class)
    void theDatabaseAgreesWhichStatesAreOpenOrEnded(ClaimState state) {
        assertThat(db.sql("select claim_is_open(?)")
                        .param(state.id())
                        .query(Boolean.class)
                        .single())
                .isEqualTo(state.isOpen());
        assertThat(db.sql("select claim_has_ended(?)")
                        .param(state.id())
                        .query(Boolean.class)
                        .single())
                .isEqualTo(state.isEnd());
    }

    @Test
    void aCaseHasOneClaimAtATimeAndAnotherAfterItsEnd() {
        SentCase sent = claimed();
        String body = "{\"amount\":\"80\",\"currency\":\"EUR\"}";
        Answer second = workshop.postJson(sent.api() + "/claim", body);
        assertThat(second.status()).isEqualTo(409);
        assertThat(second.json().get("type").stringValue()).endsWith("#claim-open-already");
        step(workshop, sent, "withdraw", "{}");
        Answer third = workshop.postJson(sent.api() + "/claim", body);
        assertThat(third.status()).as(third.toString()).isEqualTo(201);
        assertThat(third.json().get("amount").stringValue()).isEqualTo("80.00");
    }

    @Test
    void anotherWorkshopOfTheCaseSeesNoClaimButItsOwn() {
        SentCase sent = claimed();
        Server.User other = server.newUser(Role.WORKSHOP);
        Answer added = clerk.postJson(
                sent.api() + "/workshops",
                "{\"workshop\":\"" + other.actor().workshop().orElseThrow() + "\"}");
        assertThat(added.status()).isEqualTo(204);
        Client second = server.as(other);
        assertThat(second.get(sent.api()).json().get("claim").isNull()).isTrue();
        assertThat(step(second, sent, "submit", "{}").status()).isEqualTo(404);
        assertThat(second.postJson(sent.api() + "/claim", "{\"amount\":\"1\",\"currency\":\"EUR\"}")
                        .status())
                .isEqualTo(409);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'{}' | currency",
                "'{\"amount\":\"129,90\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"-1\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"0.00\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"1.999\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"12345678901\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"1e3\",\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":129.9,\"currency\":\"EUR\"}' | amount",
                "'{\"amount\":\"10.50\",\"currency\":\"JPY\"}' | amount",
                "'{\"amount\":\"10\",\"currency\":\"EURO\"}' | currency",
                "'{\"amount\":\"10\",\"currency\":\"eur\"}' | currency",
                "'{\"amount\":\"10\",\"currency\":\"XAU\"}' | currency",
                "'{\"amount\":\"10\"}' | currency",
                "'[]' | body"
            })
    void anAmountThatCannotBeRightIsRefusedByName(String body, String field) {
        SentCase sent = SentCase.open(workshop);
        Answer answer = workshop.postJson(sent.api() + "/claim", body);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(400);
        assertThat(answer.json().get("type").stringValue()).endsWith("#claim-refused");
        assertThat(answer.json().at("/errors/0/field").stringValue()).isEqualTo(field);
        assertThat(claim(sent).isNull()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "approve | '{}' | reason",
                "decline | '{\"reason\":\"  \"}' | reason",
                "approve | '{\"reason\":\"Because.\"}' | reason",
                "goodwill | '{\"reason\":\"Kind.\",\"amount\":\"129.91\"}' | amount",
                "goodwill | '{\"reason\":\"Kind.\",\"amount\":\"0\"}' | amount",
                "decline | '{\"reason\":\"Long enough to stand against what the evidence leans to.\",\"amount\":\"1\"}' | amount",
                "goodwill | '{\"reason\":\"nul \\u0000\"}' | reason",
                "goodwill | '{\"reason\":7}' | reason",
                "goodwill | '{\"reason\":\"Kind.\",\"items\":[\"charging-test\"]}' | items",
                "ask | '{}' | items",
                "ask | '{\"items\":[]}' | items",
                "ask | '{\"items\":\"charging-test\"}' | items",
                "ask | '{\"items\":[\"tea\"]}' | items"
            })
    void aStepThatCannotBeRightIsRefusedByName(String action, String body, String field) {
        SentCase sent = claimed("submit take");
        JsonNode before = claim(sent);
        Answer answer = step(clerk, sent, action, body);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(400);
        assertThat(answer.json().at("/errors/0/field").stringValue()).isEqualTo(field);
        assertThat(claim(sent)).isEqualTo(before);
    }

    @Test
    void aDecisionKeepsWhatItRestsOnAndIsNotReopenedByLaterEvidence() {
        SentCase sent = claimed();
        byte[] test =
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,\"temperatureC\":18}"
                        .getBytes(StandardCharsets.UTF_8);
        sent.send(workshop, "test.json", test, null);
        step(workshop, sent, "submit", "{}");
        step(clerk, sent, "take", "{}");
        JsonNode seen = clerk.get(sent.api()).json();
        JsonNode decision = step(clerk, sent, "approve", REASON).json().get("decision");

        assertThat(decision.get("kind").stringValue()).isEqualTo("approved");
        assertThat(decision.get("amount").stringValue()).isEqualTo("129.90");
        assertThat(decision.at("/assessment/rulebook")).isEqualTo(seen.at("/assessment/rulebook"));
        assertThat(decision.at("/assessment/leaning")).isEqualTo(seen.at("/assessment/leaning"));
        assertThat(decision.get("againstLeaning").booleanValue()).isTrue();
        String body = db.sql("select body from assessment where id = ?::uuid")
                .param(decision.at("/assessment/id").stringValue())
                .query(String.class)
                .single();
        assertThat(decision.at("/assessment/sha256").stringValue())
                .isEqualTo(Sha256.of(body.getBytes(StandardCharsets.UTF_8)).hex());
        assertThat(decision.get("evidence").size()).isOne();
        assertThat(decision.get("evidence").iterator().next().stringValue())
                .isEqualTo(Sha256.of(test).hex());
        assertThat(decision.get("basisChanged").booleanValue()).isFalse();

        sent.send(
                workshop,
                "late.json",
                new String(test, StandardCharsets.UTF_8)
                        .replace("12.61", "11.2")
                        .getBytes(StandardCharsets.UTF_8),
                null);
        JsonNode later = claim(sent);
        assertThat(later.get("state").stringValue()).isEqualTo("approved");
        assertThat(later.at("/decision/basisChanged").booleanValue()).isTrue();
        assertThat(later.at("/decision/assessment")).isEqualTo(decision.get("assessment"));
        assertThat(later.at("/decision/evidence")).isEqualTo(decision.get("evidence"));
    }

    @Test
    void aDecisionIsRefusedWhereTheCaseChangedSinceItWasRead() {
        SentCase sent = claimed("submit take");
        String tag = clerk.get(sent.api()).header("etag").orElseThrow();
        sent.send(
                workshop,
                "test.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,\"temperatureC\":18}"
                        .getBytes(StandardCharsets.UTF_8),
                null);
        Answer stale = step(clerk.header("If-Match", tag), sent, "goodwill", REASON);
        assertThat(stale.status()).as(stale.toString()).isEqualTo(412);
        assertThat(stale.json().get("type").stringValue()).endsWith("#changed-since-read");
        assertThat(stale.json().at("/lastStep/action").stringValue()).isEqualTo("take");
        String fresh = clerk.get(sent.api()).header("etag").orElseThrow();
        Answer made = step(clerk.header("If-Match", fresh), sent, "goodwill", REASON);
        assertThat(made.status()).as(made.toString()).isEqualTo(200);
        String next = made.header("etag").orElseThrow();
        assertThat(step(clerk.header("If-Match", next), sent, "settle", "{}").status())
                .isEqualTo(200);
    }

    @Test
    void whoNamesTheVersionItReadIsToldWhatOthersDidSince() {
        SentCase sent = claimed("submit");
        long seen = claim(sent).get("version").longValue();
        Server.User faster = server.newUser(Role.CLERK);
        step(server.as(faster), sent, "take", "{}");
        step(server.as(faster), sent, "ask", "{\"items\":[\"charging-test\"]}");
        Answer late = step(clerk, sent, "take", "{\"version\":" + seen + "}");
        assertThat(late.status()).as(late.toString()).isEqualTo(409);
        assertThat(late.json().get("type").stringValue()).endsWith("#changed-since-read");
        JsonNode changes = late.json().get("changes");
        assertThat(changes.size()).isEqualTo(2);
        assertThat(changes.get(0).get("act").stringValue()).isEqualTo("claim-take");
        assertThat(changes.get(1).get("act").stringValue()).isEqualTo("claim-ask");
        changes.forEach(change -> {
            assertThat(change.get("by").stringValue()).isEqualTo(faster.name());
            assertThat(java.time.Instant.parse(change.get("at").stringValue()))
                    .isBeforeOrEqualTo(java.time.Instant.now());
        });
        long now = claim(sent).get("version").longValue();
        assertThat(step(clerk, sent, "take", "{\"version\":" + now + "}").status())
                .as("and may go on without the answer")
                .isEqualTo(200);
        assertThat(step(clerk, sent, "goodwill", "{\"reason\":\"Kind.\",\"version\":\"3\"}")
                        .status())
                .isEqualTo(400);
    }

    @Test
    void ofTwoClerksWhoTakeAtOnceOneWinsAndTheOtherIsToldWhatChanged() throws Exception {
        List<Server.User> clerks = List.of(server.newUser(Role.CLERK), server.newUser(Role.CLERK));
        ExecutorService both = Executors.newFixedThreadPool(2);
        try {
            for (int round = 0; round < 5; round++) {
                SentCase sent = claimed("submit");
                CountDownLatch start = new CountDownLatch(1);
                List<Future<Answer>> answers = new ArrayList<>();
                for (Server.User user : clerks) {
                    Callable<Answer> take = () -> {
                        start.await();
                        return step(server.as(user), sent, "take", "{}");
                    };
                    answers.add(both.submit(take));
                }
                start.countDown();
                Answer first = answers.get(0).get();
                Answer second = answers.get(1).get();
                assertThat(List.of(first.status(), second.status())).containsExactlyInAnyOrder(200, 409);
                boolean firstWon = first.status() == 200;
                JsonNode told = (firstWon ? second : first).json();
                assertThat(told.get("state").stringValue()).isEqualTo("in-review");
                assertThat(told.at("/lastStep/by").stringValue())
                        .isEqualTo(clerks.get(firstWon ? 0 : 1).name());
                assertThat(told.get("detail").stringValue()).contains("'take'", "'ask', 'approve'");
                assertThat(claim(sent).get("steps").size()).isEqualTo(2);
            }
        } finally {
            both.shutdownNow();
        }
    }

    @Test
    void theDatabaseRefusesToChangeStepsDecisionsAndClaims() {
        SentCase sent = claimed("submit take decline");
        String id = db.sql("select c.id::text from claim c join case_file f on f.id = c.case_id where f.number = ?")
                .param(sent.number())
                .query(String.class)
                .single();
        for (String change : List.of(
                "update claim_step set reason = 'other' where claim_id = '" + id + "'",
                "delete from claim_step where claim_id = '" + id + "'",
                "update claim_decision set kind = 'approved', amount = 1 where claim_id = '" + id + "'",
                "delete from claim_decision where claim_id = '" + id + "'",
                "update claim set amount = 1, version = version + 1 where id = '" + id + "'",
                "update claim set state = 'approved' where id = '" + id + "'",
                "delete from claim where id = '" + id + "'",
                "truncate claim cascade")) {
            assertThatThrownBy(() -> db.sql(change).update())
                    .as(change)
                    .rootCause()
                    .hasMessageMatching("(?s).*(permission denied|by steps only).*");
        }
    }

    @Test
    void anUnknownStepAndAMissingClaimAreNotThere() {
        SentCase sent = SentCase.open(workshop);
        assertThat(step(workshop, sent, "submit", "{}").status()).isEqualTo(404);
        assertThat(step(workshop, sent, "dance", "{}").status()).isEqualTo(404);
        assertThat(workshop.send(
                                "POST",
                                sent.api() + "/claim/submit",
                                java.net.http.HttpRequest.BodyPublishers.noBody(),
                                null)
                        .status())
                .isEqualTo(404);
    }
}
