package org.voltdocket.access.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

@ServerTest
class LoginThrottleTest {

    @Autowired
    private Server server;

    private Instant now = Instant.parse("2026-03-01T08:00:00Z");

    private final Clock clock = new Clock() {
        @Override
        public Instant instant() {
            return now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }
    };

    @Test
    void theWaitGrowsAndEnds() {
        LoginThrottle brake = new LoginThrottle(clock);
        for (int i = 1; i < LoginThrottle.FREE_TRIES; i++) {
            brake.failed("a", "1");
            assertThat(brake.wait("a", "1")).as("after " + i).isZero();
        }
        brake.failed("a", "1");
        assertThat(brake.wait("a", "1")).isEqualTo(Duration.ofSeconds(30));
        assertThat(brake.wait("a", "2")).as("another address").isZero();
        assertThat(brake.wait("b", "1")).as("another account").isZero();
        now = now.plusSeconds(30);
        assertThat(brake.wait("a", "1")).isZero();
        brake.failed("a", "1");
        assertThat(brake.wait("a", "1")).isEqualTo(Duration.ofSeconds(60));
        for (int i = 0; i < 100; i++) {
            brake.failed("a", "1");
        }
        assertThat(brake.wait("a", "1")).isEqualTo(LoginThrottle.LONGEST_WAIT);
        now = now.plus(Duration.ofMinutes(61));
        brake.failed("a", "1");
        assertThat(brake.wait("a", "1")).as("old tries are forgotten").isZero();
        for (int i = 0; i < 20; i++) {
            brake.failed("a", "1");
        }
        brake.succeeded("a", "1");
        assertThat(brake.wait("a", "1")).isZero();
    }

    @Test
    void tenWrongPasswordsStopTheRightOneToo() {
        User user = server.newUser(Role.CLERK);
        User other = server.newUser(Role.CLERK);
        Client wrong = server.anonymous().basic(user.name(), "a wrong guess");
        for (int i = 0; i < LoginThrottle.FREE_TRIES; i++) {
            assertThat(wrong.postJson("/api/v1/tokens", "{\"name\":\"x\"}").status())
                    .isEqualTo(401);
        }
        Answer braked =
                server.anonymous().basic(user.name(), Server.PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"x\"}");
        assertThat(braked.status()).isEqualTo(429);
        assertThat(braked.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(braked.json().get("type").asString()).isEqualTo("/manual/problems#too-many-tries");
        assertThat(Integer.parseInt(braked.header("retry-after").orElseThrow())).isBetween(1, 30);

        Client form = server.anonymous();
        Answer page = form.postForm("/sign-in", Map.of("username", user.name(), "password", Server.PASSWORD));
        assertThat(page.header("location").orElse("")).contains("/sign-in?wait=");
        assertThat(form.get("/sign-in?wait=30").text()).contains("Wait 30 seconds");

        assertThat(server.anonymous()
                        .basic(other.name(), Server.PASSWORD)
                        .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                        .status())
                .as("others sign in as before")
                .isEqualTo(201);
    }
}
