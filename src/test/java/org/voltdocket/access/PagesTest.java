package org.voltdocket.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.voltdocket.access.TokensApiTest.assertProblem;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

@ServerTest
class PagesTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcClient db;

    @Test
    void aStrangerIsLedToTheFormAndAScriptIsTold() {
        Answer page = server.anonymous().header("Accept", "text/html").get("/account");
        assertThat(page.status()).isEqualTo(302);
        assertThat(page.header("location").orElse("")).endsWith("/sign-in");
        assertProblem(server.anonymous().header("Accept", "application/json").get("/account"), 401, "not-signed-in");
        // an upload whose session is over must not take the sign-in page for its answer
        Client script = server.anonymous();
        Client upload = script.header("X-CSRF-TOKEN", script.csrf()).header("X-Requested-With", "voltdocket");
        assertProblem(upload.postFormWithoutCsrf("/cases/V-000-001-6/evidence", Map.of()), 401, "not-signed-in");
    }

    @Test
    void everyPageCarriesItsGuards() {
        Answer page = server.anonymous().get("/sign-in");
        String policy = page.header("content-security-policy").orElseThrow();
        assertThat(policy)
                .contains("default-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("'unsafe-");
        assertThat(page.header("x-content-type-options")).hasValue("nosniff");
        assertThat(page.header("x-frame-options")).hasValue("DENY");
        assertThat(page.header("referrer-policy")).hasValue("same-origin");
        assertThat(page.header("set-cookie").orElse("")).contains("HttpOnly", "SameSite=Lax");
        assertThat(page.text()).doesNotContain("<script>", " style=\"", " onclick");
    }

    @Test
    void aFormWithoutItsTokenIsRefusedAndChangesNothing() {
        User admin = server.newUser(Role.ADMIN);
        Client browser = server.browser(admin);
        String name = "Nobody's " + UUID.randomUUID();
        Answer refused = browser.postFormWithoutCsrf("/accounts/workshops", Map.of("workshop", name));
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.text()).contains("<!DOCTYPE html>");
        assertThat(accounts.workshops()).extracting(WorkshopSummary::name).doesNotContain(name);
        assertThat(browser.postForm("/accounts/workshops", Map.of("workshop", name))
                        .status())
                .isEqualTo(302);
        assertThat(accounts.workshops()).extracting(WorkshopSummary::name).contains(name);
    }

    @Test
    void signingInChangesTheSessionAndSigningOutEndsIt() {
        User user = server.newUser(Role.CLERK);
        Client client = server.anonymous().header("Accept", "text/html");
        Map<String, String> form = Map.of("username", user.name(), "password", Server.PASSWORD);
        String first = sessionAfter(client.postForm("/sign-in", form));
        assertThat(sessionAfter(client.postForm("/sign-in", form))).isNotEqualTo(first);
        assertThat(client.get("/account").status()).isEqualTo(200);
        assertThat(client.postForm("/sign-out", Map.of()).header("location").orElse(""))
                .endsWith("/sign-in?out");
        assertThat(client.get("/account").status()).isEqualTo(302);
    }

    @Test
    void aWrongPasswordSaysNeitherWhichPartIsWrong() {
        User user = server.newUser(Role.CLERK);
        Client client = server.anonymous();
        Answer wrong = client.postForm("/sign-in", Map.of("username", user.name(), "password", "not this one"));
        Answer unknown = client.postForm("/sign-in", Map.of("username", "nobody-of-that-name", "password", "x"));
        assertThat(wrong.header("location")).isEqualTo(unknown.header("location"));
        assertThat(client.get("/sign-in?error").text()).contains("role=\"alert\"");
    }

    @Test
    void anUnknownPageIsAFriendlyPage() {
        Client browser = server.browser(server.newUser(Role.CLERK));
        Answer answer = browser.get("/no-such-page");
        assertThat(answer.status()).isEqualTo(404);
        assertThat(answer.text()).contains("<h1>Page not found</h1>").doesNotContain("??");
    }

    @Test
    void onlyTheAdministratorSeesAccounts() {
        for (Role role : new Role[] {Role.WORKSHOP, Role.CLERK, Role.AUDITOR}) {
            Client browser = server.browser(server.newUser(role));
            assertThat(browser.get("/accounts").status()).as(role.name()).isEqualTo(403);
        }
    }

    @Test
    void theAdministratorMakesAWorkshopAndItsAccount() {
        User admin = server.newUser(Role.ADMIN);
        Client browser = server.browser(admin);
        String workshop = "Made by page " + UUID.randomUUID();
        browser.postForm("/accounts/workshops", Map.of("workshop", workshop));
        WorkshopSummary made = accounts.workshops().stream()
                .filter(w -> w.name().equals(workshop))
                .findFirst()
                .orElseThrow();
        String name = "page-" + UUID.randomUUID().toString().substring(0, 8);
        Map<String, String> form =
                Map.of("name", name, "role", "WORKSHOP", "of", made.id().toString());
        assertThat(browser.postForm("/accounts", form).text()).contains("/invitation/");
        assertThat(accounts.find(name).orElseThrow().workshop()).hasValue(made);
        assertThat(browser.get("/accounts").text()).contains(name, workshop).doesNotContain("??");
        assertThat(trail.of("account/" + name))
                .extracting(TrailEntry::act, entry -> entry.actor().user())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("account-created", admin.name()),
                        org.assertj.core.groups.Tuple.tuple("account-invited", admin.name()));

        Answer again = browser.postForm("/accounts", form);
        assertThat(again.status()).isEqualTo(400);
        assertThat(again.text()).contains("There is an account of that name already", "aria-invalid=\"true\"");
        Answer unreachable = browser.postForm(
                "/accounts", Map.of("name", name + "2", "email", "nowhere", "role", "CLERK", "of", ""));
        assertThat(unreachable.status()).isEqualTo(400);
        assertThat(unreachable.text()).contains("not an e-mail address");
        Answer homeless = browser.postForm("/accounts", Map.of("name", name + "3", "role", "WORKSHOP", "of", ""));
        assertThat(homeless.text()).contains("Choose the workshop");
    }

    @Test
    void keepingOutEndsTheSessionAtOnce() {
        User user = server.newUser(Role.AUDITOR);
        Client theirs = server.browser(user);
        assertThat(theirs.get("/account").status()).isEqualTo(200);
        UUID id = accounts.find(user.name()).orElseThrow().id();
        Client admin = server.browser(server.user(Role.ADMIN));
        assertThat(admin.postForm("/accounts/" + id + "/standing", Map.of("enabled", "false"))
                        .status())
                .isEqualTo(302);
        assertThat(theirs.get("/account").status()).isEqualTo(302);
        assertThat(server.anonymous()
                        .basic(user.name(), Server.PASSWORD)
                        .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                        .status())
                .isEqualTo(401);
    }

    @Test
    void aChangedPasswordEndsOtherSessionsOnly() {
        User user = server.newUser(Role.CLERK);
        Client here = server.browser(user);
        Client elsewhere = server.browser(user);
        Client script = server.as(user);
        assertThat(script.get("/api/v1/cases").status()).isEqualTo(200);
        Map<String, String> wrong = Map.of("current", "not this one", "password", "another set of words");
        assertThat(here.postForm("/account/password", wrong).status()).isEqualTo(400);
        Map<String, String> right = Map.of("current", Server.PASSWORD, "password", "another set of words");
        assertThat(here.postForm("/account/password", right).status()).isEqualTo(302);
        assertThat(here.get("/account").status()).isEqualTo(200);
        assertThat(elsewhere.get("/account").status()).isEqualTo(302);
        assertThat(script.get("/api/v1/cases").status()).as("tokens end too").isEqualTo(401);
        assertThat(server.anonymous()
                        .basic(user.name(), "another set of words")
                        .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                        .status())
                .isEqualTo(201);
    }

    @Test
    void aTokenMadeOnThePageWorksUntilItIsRevokedThere() {
        Client browser = server.browser(server.newUser(Role.CLERK));
        Answer made = browser.postForm("/account/tokens", Map.of("name", "page token"));
        Matcher token = Pattern.compile("<code>(vd_[A-Za-z0-9_-]+)</code>").matcher(made.text());
        assertThat(token.find()).isTrue();
        Client api = server.anonymous().header("Authorization", "Bearer " + token.group(1));
        assertThat(api.get("/api/v1/nowhere").status()).isEqualTo(404);
        String list = browser.get("/account").text();
        assertThat(list).contains("page token").doesNotContain(token.group(1)).doesNotContain("??");
        // the newest is listed first
        Matcher form = Pattern.compile("/account/tokens/([0-9a-f-]{36})/revoke").matcher(list);
        assertThat(form.find()).isTrue();
        assertThat(browser.postForm("/account/tokens/" + form.group(1) + "/revoke", Map.of())
                        .status())
                .isEqualTo(302);
        assertThat(api.get("/api/v1/nowhere").status()).isEqualTo(401);
        assertThat(browser.postForm("/account/tokens/" + UUID.randomUUID() + "/revoke", Map.of())
                        .status())
                .isEqualTo(404);
    }

    @Test
    void sessionsAreListedAndEndedOnThePage() {
        User user = server.newUser(Role.CLERK);
        Client here = server.browser(user);
        Client elsewhere = server.browser(user);
        String page = here.get("/account").text();
        assertThat(page).contains("this one", "127.0.0.1").doesNotContain("??");
        Matcher other = Pattern.compile("/account/sessions/([0-9a-f-]{36})/end").matcher(page);
        assertThat(other.find()).isTrue();
        assertThat(other.find()).as("one other session").isFalse();
        other.reset();
        other.find();
        Client stranger = server.browser(server.newUser(Role.CLERK));
        assertThat(stranger.postForm("/account/sessions/" + other.group(1) + "/end", Map.of())
                        .status())
                .isEqualTo(404);
        assertThat(elsewhere.get("/account").status()).isEqualTo(200);
        assertThat(here.postForm("/account/sessions/" + other.group(1) + "/end", Map.of())
                        .status())
                .isEqualTo(302);
        assertThat(elsewhere.get("/account").status()).isEqualTo(302);
        assertThat(here.get("/account").status()).isEqualTo(200);
        assertThat(trail.of("account/" + user.name()))
                .extracting(TrailEntry::act)
                .endsWith("session-ended");
    }

    @Test
    void aCookieThatTheServerDidNotSignIsNoCsrfToken() {
        User user = server.newUser(Role.CLERK);
        Map<String, String> form = Map.of("username", user.name(), "password", Server.PASSWORD);
        for (String made : List.of("made-up", "made-up.bWFkZS11cA")) {
            Answer answer = server.anonymous()
                    .header("Cookie", "voltdocket-csrf=" + made)
                    .header("X-CSRF-TOKEN", made)
                    .postFormWithoutCsrf("/sign-in", form);
            assertThat(answer.status()).as(made).isEqualTo(403);
        }
    }

    @Test
    void theOpenFewAreOpen() {
        for (String path : new String[] {"/sign-in", "/voltdocket.css", "/v3/api-docs"}) {
            assertThat(server.anonymous().get(path).status()).as(path).isEqualTo(200);
        }
        assertThat(server.anonymous().get("/v3/api-docs").text()).doesNotContain("\"name\":\"actor\"", "SignedIn");
        assertThat(server.anonymous()
                        .send("POST", "/actuator/shutdown", BodyPublishers.noBody(), null)
                        .status())
                .isIn(302, 403, 404);
    }

    @Test
    void anonymousRequestsStoreNothingOnTheServer() {
        long before =
                db.sql("select count(*) from spring_session").query(Long.class).single();
        for (int i = 0; i < 50; i++) {
            Answer page = server.anonymous()
                    .header("Accept", "text/html")
                    .get("/cases?q=" + "x".repeat(1500) + UUID.randomUUID());
            assertThat(page.status()).isEqualTo(302);
            assertThat(page.header("set-cookie").orElse("")).doesNotContain("voltdocket-session");
            assertThat(server.anonymous().get("/sign-in").header("set-cookie").orElse(""))
                    .contains("voltdocket-csrf")
                    .doesNotContain("voltdocket-session");
        }
        assertThat(db.sql("select count(*) from spring_session")
                        .query(Long.class)
                        .single())
                .isLessThanOrEqualTo(before);
    }

    @Test
    void signInReturnsToThePageAskedForAndNowhereElse() {
        User user = server.newUser(Role.CLERK);
        Map<String, String> form = Map.of("username", user.name(), "password", Server.PASSWORD);
        Client client = server.anonymous().header("Accept", "text/html");
        client.get("/cases?q=V-0K3%209TF");
        assertThat(client.postForm("/sign-in", form).header("location").orElseThrow())
                .endsWith("/cases?q=V-0K3%209TF");
        for (String elsewhere : List.of("https://elsewhere.example/", "//elsewhere.example/", "/\\elsewhere.example")) {
            String cookie = Base64.getUrlEncoder().encodeToString(elsewhere.getBytes(StandardCharsets.UTF_8));
            Client lured = server.anonymous();
            String csrf = lured.csrf();
            String own = lured.get("/sign-in").header("set-cookie").orElse("");
            Answer in = lured.header("X-CSRF-TOKEN", csrf)
                    .header("Cookie", "voltdocket-return=" + cookie)
                    .postFormWithoutCsrf("/sign-in", form);
            assertThat(in.header("location").orElse("")).as(own).doesNotContain("elsewhere");
        }
    }

    @Test
    void aFurtherSignInEndsTheSessionThatWasUsedLeastRecently() {
        User user = server.newUser(Role.CLERK);
        List<Client> browsers = new ArrayList<>();
        for (int i = 0; i < 11; i++) {
            browsers.add(server.browser(user));
        }
        assertThat(browsers.get(0).get("/account").status()).isEqualTo(302);
        assertThat(browsers.get(1).get("/account").status()).isEqualTo(200);
        assertThat(browsers.get(10).get("/account").status()).isEqualTo(200);
        assertThat(db.sql("select count(*) from spring_session where principal_name = ?")
                        .param(user.name())
                        .query(Long.class)
                        .single())
                .isEqualTo(10);
        assertThat(db.sql("select max(max_inactive_interval) from spring_session where principal_name = ?")
                        .param(user.name())
                        .query(Integer.class)
                        .single())
                .as("seconds until an unused session ends")
                .isEqualTo(3600);
    }

    private static String sessionAfter(Answer in) {
        String cookies = String.join(" ", in.headers().allValues("set-cookie"));
        Matcher id = Pattern.compile("voltdocket-session=([^;]+)").matcher(cookies);
        assertThat(id.find()).as(cookies).isTrue();
        return id.group(1);
    }
}
