package org.voltdocket.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

@ServerTest
class TokensApiTest {

    @Autowired
    private Server server;

    @Autowired
    private TokenService tokens;

    @Autowired
    private AccountService accounts;

    @Autowired
    private PasswordVerifier signIn;

    @Autowired
    private JdbcClient jdbc;

    private static final String NOWHERE = "/api/v1/no-such-place";

    @Test
    void aTokenIsMadeByBasicAndShownOnce() {
        User user = server.newUser(Role.CLERK);
        Answer made = server.anonymous()
                .basic(user.name(), Server.PASSWORD)
                .postJson("/api/v1/tokens", "{\"name\":\"logger\"}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(made.header("cache-control")).hasValue("no-store");
        JsonNode body = made.json();
        assertThat(body.propertyNames()).containsExactlyInAnyOrder("token", "expiresAt");
        assertThat(Instant.parse(body.get("expiresAt").asString()))
                .isBetween(
                        Instant.now().plus(Duration.ofDays(90)).minusSeconds(60),
                        Instant.now().plus(Duration.ofDays(90)));
        String token = body.get("token").asString();
        assertThat(jdbc.sql("select count(*) from api_token where digest = ?")
                        .param(Sha256.of(token.getBytes()).hex())
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        // it opens the API: an unknown address is now 'not there' instead of 'not signed in'
        assertThat(server.anonymous()
                        .header("Authorization", "Bearer " + token)
                        .get(NOWHERE)
                        .status())
                .isEqualTo(404);
    }

    @Test
    void wrongOrMissingCredentialsAreAProblem() {
        User user = server.newUser(Role.CLERK);
        Answer wrong = server.anonymous().basic(user.name(), "not the password").postJson("/api/v1/tokens", "{}");
        assertProblem(wrong, 401, "not-signed-in");
        assertThat(wrong.header("www-authenticate").orElse("")).startsWith("Basic");
        assertProblem(server.anonymous().postJson("/api/v1/tokens", "{\"name\":\"x\"}"), 401, "not-signed-in");
        Answer none = server.anonymous().get(NOWHERE);
        assertProblem(none, 401, "not-signed-in");
        assertThat(none.header("www-authenticate")).hasValue("Bearer");
        assertProblem(
                server.anonymous().header("Authorization", "Bearer vd_nonsense").get(NOWHERE), 401, "not-signed-in");
        // a password opens nothing but the making of tokens, and a token makes no token
        assertProblem(server.anonymous().basic(user.name(), Server.PASSWORD).get(NOWHERE), 401, "not-signed-in");
        assertProblem(server.as(user).postJson("/api/v1/tokens", "{\"name\":\"x\"}"), 401, "not-signed-in");
    }

    @Test
    void aSessionOpensNoApi() {
        User user = server.newUser(Role.CLERK);
        assertProblem(server.browser(user).get(NOWHERE), 401, "not-signed-in");
    }

    @Test
    void whatIsWrongWithARequestIsSaid() {
        User user = server.newUser(Role.CLERK);
        var basic = server.anonymous().basic(user.name(), Server.PASSWORD);
        assertProblem(basic.postJson("/api/v1/tokens", "{\"name\":"), 400, "malformed-request");
        assertProblem(basic.postJson("/api/v1/tokens", "{\"name\":\" \"}"), 400, "malformed-request");
        assertProblem(basic.postFormWithoutCsrf("/api/v1/tokens", java.util.Map.of()), 415, "unsupported-media-type");
        Answer method = basic.get("/api/v1/tokens");
        assertProblem(method, 405, "method-not-allowed");
        assertThat(method.header("allow")).hasValue("POST");
        assertProblem(
                basic.header("Accept", "image/png").postJson("/api/v1/tokens", "{\"name\":\"x\"}"),
                406,
                "not-acceptable");
        assertProblem(server.as(user).get(NOWHERE), 404, "not-found");
    }

    @Test
    void aRevokedTokenAndADisabledAccountAreOutAtOnce() {
        User user = server.newUser(Role.AUDITOR);
        User other = server.newUser(Role.AUDITOR);
        AccountPrincipal who = signIn.check(user.name(), Server.PASSWORD).orElseThrow();
        UUID id = tokens.of(who).get(0).id();
        AccountPrincipal stranger = signIn.check(other.name(), Server.PASSWORD).orElseThrow();
        assertThat(tokens.revoke(stranger, id)).as("another's token").isFalse();
        assertThat(server.as(user).get(NOWHERE).status()).isEqualTo(404);
        assertThat(tokens.revoke(who, id)).isTrue();
        assertThat(tokens.revoke(who, id)).as("twice").isFalse();
        assertThat(server.as(user).get(NOWHERE).status()).isEqualTo(401);

        assertThat(server.as(other).get(NOWHERE).status()).isEqualTo(404);
        accounts.setEnabled(org.voltdocket.kernel.Actor.system(), stranger.account(), false);
        assertThat(server.as(other).get(NOWHERE).status()).isEqualTo(401);
    }

    @Test
    void aTokenWorksWithinItsScopeAndTime() {
        User user = server.newUser(Role.WORKSHOP);
        String read = token(user, "{\"name\":\"board\",\"scope\":\"read\",\"expiresInDays\":1}");
        String upload = token(user, "{\"name\":\"logger\",\"scope\":\"upload\"}");
        String open = "{\"batterySerial\":\"SCOPE-" + System.nanoTime() + "\",\"vin\":\"1M8GDM9AXKP042788\"}";
        assertThat(bearer(read).get("/api/v1/cases").status()).isEqualTo(200);
        assertProblem(bearer(read).postJson("/api/v1/cases", open), 403, "token-scope");
        assertProblem(bearer(upload).get("/api/v1/cases"), 403, "token-scope");
        Answer opened = bearer(upload).postJson("/api/v1/cases", open);
        assertThat(opened.status()).isEqualTo(201);
        String number = opened.json().get("number").asString();
        String test = "{\"kind\":\"cranking-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"minimumVoltageV\":9.9,"
                + "\"durationS\":0.8,\"temperatureC\":12,\"restVoltageV\":12.6}";
        assertThat(bearer(upload)
                        .upload("/api/v1/cases/" + number + "/evidence", "test.json", test.getBytes(), null)
                        .status())
                .isEqualTo(201);
        assertProblem(bearer(upload).postJson("/api/v1/cases/" + number + "/claim", "{}"), 403, "token-scope");
        TokenSummary used = tokens.of(signIn.check(user.name(), Server.PASSWORD).orElseThrow()).stream()
                .filter(one -> one.name().equals("board"))
                .findFirst()
                .orElseThrow();
        assertThat(used.usedAt().orElseThrow()).isBetween(Instant.now().minusSeconds(60), Instant.now());
        assertThat(Duration.between(used.createdAt(), used.expiresAt())).isEqualTo(Duration.ofDays(1));
        for (String wrong : new String[] {
            "{\"name\":\"x\",\"scope\":\"write\"}",
            "{\"name\":\"x\",\"expiresInDays\":0}",
            "{\"name\":\"x\",\"expiresInDays\":366}"
        }) {
            assertProblem(
                    server.anonymous().basic(user.name(), Server.PASSWORD).postJson("/api/v1/tokens", wrong),
                    400,
                    "malformed-request");
        }
    }

    private String token(User user, String body) {
        Answer made = server.anonymous().basic(user.name(), Server.PASSWORD).postJson("/api/v1/tokens", body);
        assertThat(made.status()).as(made.toString()).isEqualTo(201);
        return made.json().get("token").asString();
    }

    private Client bearer(String token) {
        return server.anonymous().header("Authorization", "Bearer " + token);
    }

    @Test
    void anExpiredTokenIsOut() {
        User user = server.newUser(Role.AUDITOR);
        assertThat(server.as(user).get(NOWHERE).status()).isEqualTo(404);
        jdbc.sql("update api_token set created_at = now() - interval '91 days', expires_at = now() - interval '1 day'"
                        + " where digest = ?")
                .param(Sha256.of(user.token().getBytes()).hex())
                .update();
        assertThat(server.as(user).get(NOWHERE).status()).isEqualTo(401);
    }

    static void assertProblem(Answer answer, int status, String slug) {
        assertThat(answer.status()).as(answer.toString()).isEqualTo(status);
        assertThat(answer.header("content-type").orElse("")).startsWith("application/problem+json");
        JsonNode problem = answer.json();
        assertThat(problem.get("type").asString()).isEqualTo("/manual/problems#" + slug);
        assertThat(problem.get("status").asInt()).isEqualTo(status);
        assertThat(problem.get("title").asString()).isNotBlank();
        assertThat(problem.get("detail").asString()).isNotBlank();
    }
}
