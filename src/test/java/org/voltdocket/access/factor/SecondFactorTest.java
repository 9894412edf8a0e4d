package org.voltdocket.access.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

@ServerTest
class SecondFactorTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Trail trail;

    /** An account with a second factor as a test sees it. */
    private record Protected(User user, Client browser, byte[] key, List<String> recoveryCodes) {

        /** The next code: the one of this step was used to set up. */
        String nextCode() {
            return Totp.code(key, Totp.step(Instant.now()) + 1);
        }
    }

    private Protected setUp() {
        User user = server.newUser(Role.CLERK);
        Client browser = server.browser(user);
        String page = browser.get("/account/second-factor").text();
        String sealed = found("name=\"sealed\" value=\"([^\"]+)\"", page);
        byte[] key = Base32.decode(found("<code>([A-Z2-7 ]{39})</code>", page).replace(" ", ""));
        assertThat(page).contains("src=\"data:image/svg+xml;base64,").doesNotContain("??");
        Map<String, String> wrong = Map.of("sealed", sealed, "code", "12345", "current", Server.PASSWORD);
        Answer refused = browser.postForm("/account/second-factor", wrong);
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.text()).contains("This is not the code of the app", "aria-invalid=\"true\"");
        String code = Totp.code(key, Totp.step(Instant.now()));
        Answer done = browser.postForm(
                "/account/second-factor", Map.of("sealed", sealed, "code", code, "current", Server.PASSWORD));
        assertThat(done.status()).as(done.text()).isEqualTo(200);
        List<String> codes = Pattern.compile("<code>([A-Z2-7]{4}(?:-[A-Z2-7]{4}){2})</code>")
                .matcher(done.text())
                .results()
                .map(match -> match.group(1))
                .toList();
        assertThat(codes).hasSize(10).doesNotHaveDuplicates();
        return new Protected(user, browser, key, codes);
    }

    @Test
    void aPasswordAloneSignsInNoLonger() {
        Protected account = setUp();
        Client client = server.anonymous().header("Accept", "text/html");
        assertThat(password(client, account.user())).endsWith("/sign-in/second");
        assertThat(client.get("/account").status()).as("not yet").isEqualTo(302);
        assertThat(client.get("/sign-in/second").text())
                .contains("name=\"code\"")
                .doesNotContain("??");
        assertThat(code(client, "000000")).endsWith("/sign-in/second?error");
        String code = account.nextCode();
        assertThat(code(client, code)).doesNotContain("sign-in");
        assertThat(client.get("/account").status()).isEqualTo(200);

        Client again = server.anonymous().header("Accept", "text/html");
        password(again, account.user());
        assertThat(code(again, code)).as("a code works once").endsWith("?error");
        assertThat(code(again, account.recoveryCodes().get(0).toLowerCase())).doesNotContain("sign-in");
        assertThat(again.get("/account").text()).contains("Recovery codes left: 9");
        Client third = server.anonymous();
        password(third, account.user());
        assertThat(code(third, account.recoveryCodes().get(0)))
                .as("a recovery code works once")
                .endsWith("?error");
        assertThat(trail.of("account/" + account.user().name()))
                .extracting(TrailEntry::act)
                .contains("second-factor-set-up", "signed-in", "sign-in-failed");
        assertThat(db.sql("select count(*) from recovery_code where digest like '%-%'")
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @Test
    void theCodeWithoutThePasswordIsWorthNothing() {
        Client client = server.anonymous();
        assertThat(code(client, "123456")).endsWith("/sign-in?late");
        User user = server.newUser(Role.CLERK);
        Client forged = server.anonymous().header("Cookie", "voltdocket-second=" + user.name());
        assertThat(forged.get("/sign-in/second").header("location").orElse("")).endsWith("/sign-in?late");
    }

    @Test
    void wrongCodesAreThrottled() {
        Protected account = setUp();
        Client client = server.anonymous();
        password(client, account.user());
        for (int i = 0; i < 10; i++) {
            assertThat(code(client, "00000" + i % 10)).endsWith("?error");
        }
        assertThat(code(client, account.nextCode())).contains("/sign-in/second?wait=");
    }

    @Test
    void aTokenNeedsTheCodeToo() {
        Protected account = setUp();
        Client basic = server.anonymous().basic(account.user().name(), Server.PASSWORD);
        Answer without = basic.postJson("/api/v1/tokens", "{\"name\":\"x\"}");
        assertThat(without.status()).isEqualTo(401);
        assertThat(without.json().get("type").asString()).isEqualTo("/manual/problems#second-factor-needed");
        String body = "{\"name\":\"x\",\"code\":\"" + account.nextCode() + "\"}";
        assertThat(basic.postJson("/api/v1/tokens", body).status()).isEqualTo(201);
        assertThat(basic.postJson("/api/v1/tokens", body).status()).isEqualTo(401);
    }

    @Test
    void itIsRemovedByItsOwnerWithThePasswordOrByAnAdministrator() {
        Protected account = setUp();
        Map<String, String> current = Map.of("current", Server.PASSWORD);
        assertThat(account.browser()
                        .postForm("/account/second-factor/remove", Map.of("current", "a wrong guess"))
                        .status())
                .isEqualTo(400);
        assertThat(account.browser()
                        .postForm("/account/recovery-codes", current)
                        .text())
                .doesNotContain(account.recoveryCodes().get(3));
        assertThat(account.browser()
                        .postForm("/account/second-factor/remove", current)
                        .status())
                .isEqualTo(302);
        assertThat(password(server.anonymous(), account.user())).doesNotContain("second");

        Protected other = setUp();
        String id = accounts.find(other.user().name()).orElseThrow().id().toString();
        Client admin = server.browser(server.user(Role.ADMIN));
        assertThat(admin.postForm("/accounts/" + id + "/factors/remove", Map.of())
                        .status())
                .isEqualTo(302);
        assertThat(password(server.anonymous(), other.user())).doesNotContain("second");
        assertThat(trail.of("account/" + other.user().name()))
                .extracting(TrailEntry::act)
                .contains("second-factor-removed");
    }

    @Test
    void clerksAreAskedToSetItUp() {
        String ask = "Protect this account";
        assertThat(server.browser(server.newUser(Role.CLERK)).get("/cases").text())
                .contains(ask);
        assertThat(server.browser(server.newUser(Role.WORKSHOP)).get("/cases").text())
                .doesNotContain(ask);
        assertThat(setUp().browser().get("/cases").text()).doesNotContain(ask);
    }

    private static String password(Client client, User user) {
        return client.postForm("/sign-in", Map.of("username", user.name(), "password", Server.PASSWORD))
                .header("location")
                .orElse("");
    }

    private static String code(Client client, String code) {
        return client.postForm("/sign-in/second", Map.of("code", code))
                .header("location")
                .orElse("");
    }

    private static String found(String pattern, String page) {
        Matcher matcher = Pattern.compile(pattern).matcher(page);
        assertThat(matcher.find()).as(pattern + " in " + page).isTrue();
        return matcher.group(1);
    }
}
