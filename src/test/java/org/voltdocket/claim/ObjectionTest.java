package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** What follows a decision: an objection and its answer, which move nothing, and later claims, which hide no earlier one. */
@ServerTest
class ObjectionTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcTemplate db;

    private Server.User owner;
    private Client workshop;
    private Client clerk;
    private SentCase sent;

    @BeforeEach
    void people() {
        owner = server.newUser(Role.WORKSHOP);
        workshop = server.as(owner);
        clerk = server.as(Role.CLERK);
        sent = SentCase.open(workshop);
    }

    private static String reason(String text) {
        return "{\"reason\":\"" + text + "\"}";
    }

    private JsonNode ok(int status, Answer answer) {
        assertThat(answer.status()).as(answer.toString()).isEqualTo(status);
        return answer.json();
    }

    private void claim(String amount, String... steps) {
        ok(201, workshop.postJson(sent.api() + "/claim", "{\"amount\":\"" + amount + "\",\"currency\":\"EUR\"}"));
        for (String step : steps) {
            Client who = step.equals("submit") ? workshop : clerk;
            ok(200, who.postJson(sent.api() + "/claim/" + step, reason("Long enough to stand against any leaning.")));
        }
    }

    @Test
    void anObjectionIsKeptShownAndAnsweredAndMovesNothing() {
        claim("80.00", "submit", "take");
        String path = sent.api() + "/claim/objection";
        assertThat(workshop.postJson(path, reason("too early")).status()).isEqualTo(409);
        ok(200, clerk.postJson(sent.api() + "/claim/decline", reason("Long enough to stand against any leaning.")));
        assertThat(workshop.postJson(path, reason(" ")).status()).isEqualTo(400);
        assertThat(clerk.postJson(path + "/answer", reason("to what?")).status())
                .isEqualTo(409);

        JsonNode made = ok(201, workshop.postJson(path, reason("The test was of another battery.")));
        assertThat(made.at("/objections/0/reason").stringValue()).isEqualTo("The test was of another battery.");
        assertThat(made.at("/state").stringValue()).isEqualTo("declined");
        assertThat(workshop.postJson(path, reason("once more")).status()).isEqualTo(409);
        Client desk = server.browser(server.user(Role.CLERK));
        assertThat(desk.get("/desk?state=all&look=objection&q=" + sent.number()).text())
                .contains(sent.number(), "objection");
        String notices = sent.api() + "/notices";
        await(() -> clerk.get(notices).text().contains("decision-objected-to"));
        assertThat(clerk.get(notices).text()).contains("The test was of another battery.");
        String id = clerk.get(notices).json().at("/0/id").stringValue();
        Answer looked = clerk.postJson("/api/v1/notices/" + id, reason("seen"));
        assertThat(looked.status()).as(looked.toString()).isEqualTo(409);
        assertThat(looked.text()).contains("answered, on the page of the case");
        assertThat(workshop.postJson(path + "/answer", reason("I win")).status())
                .isEqualTo(403);

        JsonNode answered = ok(200, clerk.postJson(path + "/answer", reason("The serial on the photo is yours.")));
        assertThat(answered.at("/objections/0/answer").stringValue()).isEqualTo("The serial on the photo is yours.");
        assertThat(answered.at("/state").stringValue()).isEqualTo("declined");
        assertThat(answered.at("/version").longValue())
                .isEqualTo(made.at("/version").longValue());
        assertThat(desk.get("/desk?state=all&look=objection&q=" + sent.number()).text())
                .doesNotContain(">" + sent.number() + "<");
        await(() -> clerk.get(notices).json().at("/0/goneAt").isString());
        assertThat(server.browser(owner).get("/cases/" + sent.number()).text())
                .contains("The serial on the photo is yours.", "Object to the decision");
        assertThat(db.queryForList(
                        "select act from trail_entry where subject = ? and act like 'claim-objection%' order by position",
                        String.class, sent.number()))
                .containsExactly("claim-objection", "claim-objection-answered");
        assertThatThrownBy(() -> db.update("update claim_objection set reason = 'none'"))
                .isInstanceOf(DataAccessException.class);
    }

    @Test
    void theWorkshopObjectsOnThePageAndWhatIsRefusedComesBack() {
        claim("80.00", "submit", "take", "decline");
        Client page = server.browser(owner);
        String path = "/cases/" + sent.number() + "/claim/objection";
        assertThat(page.postForm(path, Map.of("reason", "The sum leaves out the mileage."))
                        .status())
                .isEqualTo(302);
        Answer second = page.postForm(path, Map.of("reason", "And the year."));
        assertThat(second.status()).isEqualTo(409);
        assertThat(second.text()).contains("waits for its answer", "The sum leaves out the mileage.");
        Client desk = server.browser(server.user(Role.CLERK));
        assertThat(desk.postForm(path + "/answer", Map.of("reason", "It counts the month it was sold in."))
                        .status())
                .isEqualTo(302);
        assertThat(page.get("/cases/" + sent.number()).text()).contains("It counts the month it was sold in.");
    }

    @Test
    void aLaterClaimHidesNoEarlierDecisionAndItsPapers() throws IOException {
        claim("80.00", "submit", "take", "decline", "settle");
        byte[] first = workshop.get(sent.api() + "/claims/1/letter.pdf").body();
        claim("90.00", "submit", "take");
        assertThat(workshop.get(sent.api() + "/claims/1/letter.pdf").body()).isEqualTo(first);
        assertThat(workshop.get(sent.api() + "/claims/1/report.pdf").status()).isEqualTo(200);
        assertThat(workshop.get(sent.api() + "/claims/2/letter.pdf").status()).isEqualTo(404);
        assertThat(workshop.get(sent.api() + "/claims/3").status()).isEqualTo(404);
        assertThat(clerk.get(sent.api() + "/claims/1/assessment").status()).isEqualTo(200);
        JsonNode all = ok(200, clerk.get(sent.api() + "/claims"));
        assertThat(all.size()).isEqualTo(2);
        assertThat(all.at("/0/decision/letter").stringValue()).isEqualTo(sent.api() + "/claims/1/letter.pdf");
        assertThat(all.at("/1/amount").stringValue()).isEqualTo("90.00");
        String page = server.browser(owner).get("/cases/" + sent.number()).text();
        assertThat(page).contains("/cases/" + sent.number() + "/claims/1/letter.pdf", "Earlier claims");
        assertThat(names(workshop.get(sent.api() + "/bag.zip").body()))
                .anyMatch(name -> name.endsWith("data/claims/1/letter.pdf"))
                .anyMatch(name -> name.endsWith("data/claims/1/claim.json"));
        Client other = server.as(server.newUser(Role.WORKSHOP));
        assertThat(other.get(sent.api() + "/claims/1/letter.pdf").status()).isEqualTo(404);
    }

    private static List<String> names(byte[] bag) throws IOException {
        List<String> names = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bag))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                names.add(entry.getName());
            }
        }
        return names;
    }

    /** Notices are found in the background. */
    private static void await(BooleanSupplier there) {
        long until = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        while (!there.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited too long").isLessThan(until);
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
