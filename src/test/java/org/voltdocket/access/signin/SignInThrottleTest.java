package org.voltdocket.access.signin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

/** With a clock that the test sets, and accounts and addresses that nobody else uses. */
@ServerTest
class SignInThrottleTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    /** The values of application.yml. */
    private final SignInSettings settings = new SignInSettings(
            "",
            10,
            50,
            100,
            Duration.ofSeconds(30),
            Duration.ofMinutes(15),
            Duration.ofHours(1),
            Duration.ofDays(7),
            true,
            Duration.ofDays(180),
            Set.of(),
            Set.of());

    @Autowired
    private TransactionTemplate transaction;

    private Instant now = Instant.now();
    private final String mark = UUID.randomUUID().toString();

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
        for (int i = 1; i <= 10; i++) {
            assertThat(wait("a", "1")).as("attempt " + i).isZero();
        }
        assertThat(wait("a", "1")).isBetween(30, 31);
        assertThat(wait("a", "2")).as("another address").isZero();
        assertThat(wait("b", "1")).as("another account").isZero();
        now = now.plusSeconds(31);
        assertThat(wait("a", "1")).isZero();
        assertThat(wait("a", "1")).isBetween(60, 61);
        for (int i = 0; i < 20; i++) {
            now = now.plus(Duration.ofMinutes(15)).plusSeconds(1);
            assertThat(wait("a", "1")).isZero();
        }
        assertThat(wait("a", "1")).isBetween(900, 901);
        now = now.plus(Duration.ofMinutes(61));
        assertThat(wait("a", "1")).as("old failures are forgotten").isZero();
        assertThat(wait("a", "1")).isZero();
    }

    @Test
    void manyAddressesDoNotHelpAgainstOneAccount() {
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            refused += wait("victim", "address-" + i) > 0 ? 1 : 0;
        }
        assertThat(refused).isEqualTo(10);
        assertThat(throttled(new SignInAttempt(name("victim"), name("home"), "its device")))
                .as("the owner's device is known")
                .isZero();
    }

    @Test
    void manyAccountsDoNotHelpFromOneAddress() {
        int refused = 0;
        for (int i = 0; i < 110; i++) {
            refused += wait("account-" + i, "one") > 0 ? 1 : 0;
        }
        assertThat(refused).isEqualTo(10);
    }

    @Test
    void aSuccessForgetsTheAccountAndOneAttemptOfTheAddress() {
        SignInThrottle throttle = new SignInThrottle(db, settings, clock);
        for (int i = 0; i < 9; i++) {
            wait("c", "3");
        }
        SignInAttempt right = new SignInAttempt(name("c"), name("3"), "");
        assertThat(throttled(right)).isZero();
        assertThat(throttle.succeeded(right)).isEqualTo(9);
        for (int i = 0; i < 10; i++) {
            assertThat(wait("c", "3")).as("again " + i).isZero();
        }
        assertThat(wait("c", "3")).isPositive();
    }

    @Test
    void failuresWithoutANameAreCountedForTheAddress() {
        SignInThrottle throttle = new SignInThrottle(db, settings, clock);
        for (int i = 0; i < 100; i++) {
            assertThat(throttle.failedFrom(name("6"))).as("failure " + i).isTrue();
        }
        assertThat(throttle.failedFrom(name("6"))).isFalse();
        assertThat(wait("f", "6")).isPositive();
    }

    @Test
    void anAttemptThatIsRefusedIsNotCounted() {
        for (int i = 0; i < 100; i++) {
            wait("d", "4");
        }
        // ten of the hundred were counted, so the account has room from elsewhere
        for (int i = 0; i < 39; i++) {
            assertThat(wait("d", "from-" + i)).isZero();
        }
    }

    @Test
    void attemptsAtTheSameTimeAreCountedEach() throws Exception {
        SignInThrottle throttle = new SignInThrottle(db, settings, clock);
        AtomicInteger allowed = new AtomicInteger();
        ExecutorService threads = Executors.newFixedThreadPool(8);
        for (int i = 0; i < 40; i++) {
            threads.submit(() -> {
                try {
                    transaction.executeWithoutResult(
                            tx -> throttle.attempt(new SignInAttempt(name("e"), name("5"), "")));
                    allowed.incrementAndGet();
                } catch (RequestException refused) {
                    assertThat(refused.status()).isEqualTo(429);
                }
            });
        }
        threads.shutdown();
        assertThat(threads.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
        assertThat(allowed).hasValue(10);
    }

    @Test
    void anAddressOfVersion6CountsByItsSubnet() {
        assertThat(ClientNetwork.ofThrottle("2001:db8:1:2:3:4:5:6")).isEqualTo("2001:db8:1:2:0:0:0:0/64");
        assertThat(ClientNetwork.ofThrottle("192.0.2.77")).isEqualTo("192.0.2.77/32");
        assertThat(ClientNetwork.of("192.0.2.77")).isEqualTo("192.0.2.0/24");
        assertThat(ClientNetwork.of("2001:db8:1:2:3:4:5:6")).isEqualTo("2001:db8:1:0:0:0:0:0/48");
        assertThat(ClientNetwork.of("no address")).isEqualTo("no address");
    }

    @Test
    void tenWrongPasswordsStopTheRightOneTooWhateverAddressIsForwarded() {
        User user = server.newUser(Role.CLERK);
        User other = server.newUser(Role.CLERK);
        for (int i = 0; i < settings.triesPerPair(); i++) {
            assertThat(server.anonymous()
                            .basic(user.name(), "a wrong guess")
                            .header("X-Forwarded-For", "203.0.113." + i)
                            .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                            .status())
                    .isEqualTo(401);
        }
        Answer refused =
                server.anonymous().basic(user.name(), Server.PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"x\"}");
        assertThat(refused.status()).isEqualTo(429);
        assertThat(refused.header("content-type").orElse("")).startsWith("application/problem+json");
        assertThat(refused.json().get("type").asString()).isEqualTo("/manual/problems#too-many-tries");
        assertThat(Integer.parseInt(refused.header("retry-after").orElseThrow()))
                .isBetween(1, 31);

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

    @Test
    void theCurrentPasswordIsThrottledToo() {
        Client browser = server.browser(server.newUser(Role.CLERK));
        Map<String, String> wrong = Map.of("current", "a wrong guess", "password", "another set of words");
        for (int i = 0; i < settings.triesPerPair(); i++) {
            assertThat(browser.postForm("/account/password", wrong).status()).isEqualTo(400);
        }
        Map<String, String> right = Map.of("current", Server.PASSWORD, "password", "another set of words");
        Answer refused = browser.postForm("/account/password", right);
        assertThat(refused.status()).isEqualTo(429);
        assertThat(refused.text()).contains("Too many wrong passwords");
    }

    @Test
    void aRefusedAttemptNeedsAValidKind() {
        assertThatThrownBy(() -> db.sql(
                                "insert into sign_in_throttle (kind, subject, failures, last_at) values ('NAME', ?, 1, now())")
                        .param("0".repeat(64))
                        .update())
                .hasMessageContaining("sign_in_throttle");
    }

    private String name(String text) {
        return mark + text;
    }

    /** Seconds to wait, 0 where the attempt was counted. */
    private int wait(String account, String address) {
        return throttled(new SignInAttempt(name(account), name(address), ""));
    }

    private int throttled(SignInAttempt attempt) {
        SignInThrottle throttle = new SignInThrottle(db, settings, clock);
        try {
            transaction.executeWithoutResult(tx -> throttle.attempt(attempt));
            return 0;
        } catch (RequestException refused) {
            return refused.retryAfterSeconds();
        }
    }
}
