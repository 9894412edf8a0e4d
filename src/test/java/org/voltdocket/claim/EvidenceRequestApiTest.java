package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Map;
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

/** Asking for evidence: a list, a place for each thing on it, and the way back to the clerk. */
@ServerTest
class EvidenceRequestApiTest {

    private static final byte[] CHARGING =
            "{\"kind\":\"charging-test\",\"takenAt\":\"2026-03-04T09:00:00+01:00\",\"idleVoltageV\":14.2,\"restVoltageV\":12.6,\"temperatureC\":18}"
                    .replace("\"restVoltageV\":12.6,", "")
                    .getBytes(StandardCharsets.UTF_8);
    private static final byte[] BATTERY =
            "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,\"temperatureC\":18}"
                    .getBytes(StandardCharsets.UTF_8);

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    private Client workshop;
    private Client clerk;
    private SentCase sent;

    @BeforeEach
    void claimInReview() {
        workshop = server.as(server.newUser(Role.WORKSHOP));
        clerk = server.as(Role.CLERK);
        sent = SentCase.open(workshop);
        workshop.postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        step(workshop, "submit", "{}");
        step(clerk, "take", "{}");
    }

    private JsonNode step(Client client, String action, String body) {
        Answer answer = client.postJson(sent.api() + "/claim/" + action, body);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
        return answer.json();
    }

    private Answer give(int position, String words, byte[] file) {
        return workshop.multipart(
                sent.api() + "/claim/requested-items/" + position,
                words == null ? Map.of() : Map.of("words", words),
                file == null ? null : "requested.json",
                file);
    }

    private JsonNode requestedItem(int position) {
        return clerk.get(sent.api()).json().at("/claim/requestedItems/" + (position - 1));
    }

    private JsonNode ask() {
        return step(
                clerk,
                "ask",
                "{\"items\":[\"charging-test\",\"battery.soldOn\"],\"others\":[\" A photograph of the date code \",\"\"]}");
    }

    @Test
    void eachThingHasItsPlaceAndShowsWhatCame() {
        JsonNode claim = ask();
        assertThat(claim.get("awaited").toString())
                .isEqualTo("[\"charging-test\",\"battery.soldOn\",\"A photograph of the date code\"]");
        assertThat(claim.at("/requestedItems/2/text").stringValue()).isEqualTo("A photograph of the date code");
        assertThat(claim.at("/requestedItems/2").has("item")).isFalse();
        assertThat(claim.get("requestedItems")
                        .valueStream()
                        .map(i -> i.get("answered").booleanValue()))
                .containsOnly(false);

        Answer other = give(1, null, BATTERY);
        assertThat(other.status()).as(other.toString()).isEqualTo(200);
        assertThat(requestedItem(1).get("answered").booleanValue())
                .as("kept, but it is no charging test")
                .isFalse();
        assertThat(requestedItem(1).get("evidence").size()).isOne();
        give(1, "Loads on, as you asked.", CHARGING);
        assertThat(requestedItem(1).get("answered").booleanValue()).isTrue();
        assertThat(requestedItem(1).get("evidence").size()).isEqualTo(2);
        assertThat(requestedItem(1).get("words").toString()).isEqualTo("[\"Loads on, as you asked.\"]");
        assertThat(clerk.get(sent.api()).json().get("evidence").size()).isEqualTo(2);

        workshop.patchJson(sent.api(), "{\"battery\":{\"soldOn\":\"2025-10-01\"}}");
        assertThat(requestedItem(2).get("answered").booleanValue()).isTrue();
        assertThat(give(3, "The label is gone.", null).status()).isEqualTo(200);
        assertThat(requestedItem(3).get("answered").booleanValue()).isTrue();

        step(workshop, "answer", "{}");
        assertThat(requestedItem(3).get("words").toString())
                .as("the clerk sees it after the answer")
                .isEqualTo("[\"The label is gone.\"]");
    }

    @Test
    void evidenceThatComesByTheOtherDoorAnswersToo() {
        sent.send(workshop, "early.json", CHARGING, null);
        ask();
        assertThat(requestedItem(1).get("answered").booleanValue())
                .as("what was there before does not answer")
                .isFalse();
        assertThat(give(1, null, CHARGING).status()).isEqualTo(200);
        assertThat(requestedItem(1).get("answered").booleanValue())
                .as("the workshop says that it is this one")
                .isTrue();
    }

    @Test
    void theAnsweredClaimComesBackWithItsTimeUntilTheNextStep() {
        ask();
        assertThat(back()).isEmpty();
        step(workshop, "answer", "{}");
        assertThat(back()).isNotEmpty();
        step(clerk, "goodwill", "{\"reason\":\"A good customer.\"}");
        assertThat(back()).isEmpty();
    }

    private java.util.Optional<java.sql.Timestamp> back() {
        return java.util.Optional.ofNullable(
                db.sql("select answered_at from claim c join case_file f on f.id = c.case_id where f.number = ?")
                        .param(sent.number())
                        .query((row, n) -> java.util.Optional.ofNullable(row.getTimestamp(1)))
                        .single()
                        .orElse(null));
    }

    @Test
    void whatCannotBeRightIsRefusedAndChangesNothing() {
        assertThat(give(1, "Too early.", null).status()).isEqualTo(409);
        ask();
        JsonNode before = clerk.get(sent.api()).json();
        assertThat(give(4, "No such thing.", null).status()).isEqualTo(404);
        Answer nothing = give(1, "  ", null);
        assertThat(nothing.status()).isEqualTo(400);
        assertThat(nothing.json().at("/errors/0/field").stringValue()).isEqualTo("file");
        Answer broken = give(1, null, "{\"kind\":\"charging-test\"}".getBytes(StandardCharsets.UTF_8));
        assertThat(broken.status()).as(broken.toString()).isEqualTo(422);
        assertThat(clerk.multipart(sent.api() + "/claim/requested-items/1", Map.of("words", "I."), null, null)
                        .status())
                .isEqualTo(403);
        Client other = server.as(server.newUser(Role.WORKSHOP));
        assertThat(other.multipart(sent.api() + "/claim/requested-items/1", Map.of("words", "I."), null, null)
                        .status())
                .isEqualTo(404);
        assertThat(clerk.get(sent.api()).json().get("claim")).isEqualTo(before.get("claim"));
        assertThat(clerk.get(sent.api()).json().get("evidence")).isEqualTo(before.get("evidence"));
        assertThatThrownBy(() -> {
                    give(1, "Kept.", null);
                    db.sql("update claim_answer set words = 'other'").update();
                })
                .hasStackTraceContaining("permission denied");
    }

    @Test
    void otherWordsAreLinesOfText() {
        for (String body : new String[] {
            "{\"others\":[\"line\\nbreak\"]}",
            "{\"others\":[\"" + "x".repeat(201) + "\"]}",
            "{\"others\":\"a photograph\"}",
            "{\"others\":[7]}"
        }) {
            Answer refused = clerk.postJson(sent.api() + "/claim/ask", body);
            assertThat(refused.status()).as(body).isEqualTo(400);
            assertThat(refused.json().at("/errors/0/field").stringValue()).isEqualTo("others");
        }
        assertThat(step(clerk, "ask", "{\"others\":[\"A photograph of the date code\"]}")
                        .get("awaited")
                        .size())
                .isOne();
    }
}
