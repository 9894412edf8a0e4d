package org.voltdocket.quota;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

@ServerTest
class QuotaTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    @Autowired
    private QuotaLimits limits;

    private User user;
    private Client workshop;
    private String number;

    @BeforeEach
    void openCase() {
        user = server.newUser(Role.WORKSHOP);
        workshop = server.as(user);
        number = workshop.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                .json()
                .get("number")
                .asString();
    }

    @Test
    void theLastUploadOfTheDayIsTakenAndTheNextIsToldWhenToComeBack() {
        use("uploads", limits.uploadsPerDay() - 1);
        assertThat(upload().status()).isEqualTo(201);

        Answer refused = upload();
        assertThat(refused.status()).as(refused.toString()).isEqualTo(429);
        JsonNode problem = refused.json();
        assertThat(problem.get("type").asString()).endsWith("#quota-reached");
        assertThat(problem.get("quota").asString()).isEqualTo("uploads");
        assertThat(problem.get("limit").asLong()).isEqualTo(limits.uploadsPerDay());
        Instant reset = Instant.parse(problem.get("resetsAt").asString());
        assertThat(reset).isAfter(Instant.now()).isEqualTo(tomorrow());
        assertThat(Long.parseLong(refused.header("retry-after").orElseThrow())).isBetween(1L, 86_401L);

        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .hasSize(1);
        assertThat(server.as(server.newUser(Role.WORKSHOP)).get("/api/v1/usage").status())
                .isEqualTo(200);
        assertThat(workshop.patchJson("/api/v1/cases/" + number, "{\"complaint\":\"Still heard.\"}")
                        .status())
                .as("the other quotas are not reached")
                .isEqualTo(200);
    }

    @Test
    void bytesAndAssessmentsHaveQuotasOfTheirOwn() {
        use("bytes", limits.bytesPerDay().toBytes() - 100);
        assertThat(upload().json().get("quota").asString()).isEqualTo("bytes");
        use("assessments", limits.assessmentsPerDay());
        Answer refused = workshop.patchJson("/api/v1/cases/" + number, "{\"complaint\":\"Not heard.\"}");
        assertThat(refused.status()).as(refused.toString()).isEqualTo(429);
        assertThat(refused.json().get("quota").asString()).isEqualTo("assessments");
        assertThat(workshop.get("/api/v1/cases/" + number).json().has("complaint"))
                .isFalse();
    }

    @Test
    void tokensAreLimitedUntilOneIsRevoked() {
        Answer last = null;
        for (int i = 0; i < limits.tokens(); i++) {
            last = server.anonymous()
                    .basic(user.name(), Server.PASSWORD)
                    .postJson("/api/v1/tokens", "{\"name\":\"one more\"}");
        }
        assertThat(last.status()).as(last.toString()).isEqualTo(409);
        assertThat(last.json().get("type").asString()).endsWith("#quota-reached");
        assertThat(used("tokens")).isEqualTo(limits.tokens());
    }

    @Test
    void theUseIsVisibleBeforeItIsReached() {
        upload();
        assertThat(used("uploads")).isEqualTo(1);
        assertThat(used("bytes")).isPositive();
        assertThat(used("assessments")).isEqualTo(1);
        Client pages = server.browser(user);
        assertThat(pages.get("/usage").text()).contains("Use and limits").doesNotContain("nearly reached", "??");
        assertThat(pages.get("/cases/" + number).text()).doesNotContain("of the limit is used");

        use("uploads", limits.uploadsPerDay() * 9 / 10);
        assertThat(pages.get("/usage").text()).contains("nearly reached");
        assertThat(pages.get("/cases/" + number).text()).contains("Uploads: 90 % of the limit is used.");
    }

    @Test
    void theDistributorsAccountsHaveNone() {
        assertThat(server.as(Role.CLERK).get("/api/v1/usage").json().get("quotas"))
                .isEmpty();
    }

    private Answer upload() {
        return workshop.upload(People.evidence(number), "b.json", People.battery(), null);
    }

    private long used(String quota) {
        for (JsonNode one : workshop.get("/api/v1/usage").json().get("quotas")) {
            if (one.get("quota").asString().equals(quota)) {
                return one.get("used").asLong();
            }
        }
        throw new AssertionError("no quota " + quota);
    }

    /** Sets what was used today. */
    private void use(String column, long value) {
        assertThat(db.sql("update workshop_usage set " + column + " = ? where workshop_id = ? and day = ?")
                        .param(value)
                        .param(user.actor().workshop().orElseThrow())
                        .param(LocalDate.now(ZoneOffset.UTC))
                        .update())
                .isOne();
    }

    private static Instant tomorrow() {
        return LocalDate.now(ZoneOffset.UTC)
                .plusDays(1)
                .atStartOfDay(ZoneOffset.UTC)
                .toInstant();
    }
}
