package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OpenIdProvider;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;

/**
 * Passkeys with the virtual authenticator of Chromium, and OpenID Connect with Spring Authorization Server, against a server
 * in a process of its own that requires a second factor of clerks.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SignInWaysTest {

    private OwnDatabase database;
    private OpenIdProvider provider;
    private Node node;
    private Client admin;

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        database = new OwnDatabase(folder.resolve("pg"));
        provider = new OpenIdProvider(
                folder.resolve("provider"),
                Map.of(
                        "ada", claims("ada.admin", List.of("staff", "voltdocket-admin"), ""),
                        "wim", claims("wim", List.of("voltdocket-workshop"), "Harbour Road Garage"),
                        "una", claims("una", List.of("voltdocket-workshop"), "Unknown Garage"),
                        "nora", claims("nora", List.of("staff"), ""),
                        "eve", claims(Node.ADMIN, List.of("voltdocket-admin"), "")));
        node = new Node(
                database,
                folder.resolve("node"),
                List.of(
                        "--voltdocket.openid.issuer=" + provider.issuer(),
                        "--voltdocket.openid.client-id=" + OpenIdProvider.CLIENT,
                        "--voltdocket.openid.name=Invented Distribution",
                        "--voltdocket.sign-in.require-second-factor=CLERK"),
                Map.of("VOLTDOCKET_OPENID_CLIENTSECRET", OpenIdProvider.SECRET));
        provider.allow(node.url() + "/sign-in/openid/answer/provider");
        admin = People.pages(node, Node.ADMIN);
        admin.postForm("/accounts/workshops", Map.of("workshop", "Harbour Road Garage"));
        People.account(admin, "carl", "CLERK", "");
    }

    private static Map<String, Object> claims(String name, List<String> roles, String workshop) {
        return Map.of("preferred_username", name, "roles", roles, "workshop", workshop);
    }

    @AfterAll
    void stop() throws Exception {
        node.close();
        provider.close();
        database.close();
    }

    @Test
    void aPasskeyIsAddedSignsInAndIsRemoved() {
        try (Chromium chromium = new Chromium()) {
            Page page = chromium.window(Chromium.PHONE, true, false);
            CDPSession cdp = page.context().newCDPSession(page);
            cdp.send("WebAuthn.enable");
            cdp.send("WebAuthn.addVirtualAuthenticator", authenticator());
            passwordOf(page, "carl");
            assertThat(page.url()).as("a clerk needs a second factor").contains("/account/second-factor?required");
            page.navigate(node.url() + "/cases");
            assertThat(page.url()).contains("/account/second-factor?required");
            page.navigate(node.url() + "/account");
            page.fill("#passkey-label", "Phone of Carl");
            page.click("#passkey-form button");
            page.waitForSelector("text=Phone of Carl");
            page.navigate(node.url() + "/cases");
            assertThat(page.url()).endsWith("/cases");

            page.context().clearCookies();
            page.navigate(node.url() + "/cases?q=after");
            page.click("#passkey-sign-in button");
            page.waitForURL("**/cases?q=after**");
            page.navigate(node.url() + "/account");
            assertThat(page.locator("#passkeys").textContent()).contains("Phone of Carl");
            page.click("#passkeys li button");
            page.waitForSelector("text=The passkey is removed");

            page.context().clearCookies();
            page.navigate(node.url() + "/sign-in");
            page.click("#passkey-sign-in button");
            page.waitForSelector("#passkey-failed:not([hidden])");
            String trail = admin.get("/trail?subject=account/carl").text();
            assertThat(trail)
                    .contains("Passkey added", "Passkey removed", "Signed in")
                    .doesNotContain("??");
            assertThat(chromium.complaints()).isEmpty();
        }
    }

    @Test
    void theProviderGivesRoleAndWorkshop() {
        try (Chromium chromium = new Chromium()) {
            assertThat(at(chromium, "ada")).endsWith("/cases");
            assertThat(admin.get("/accounts").text()).contains("ada.admin", "by the OpenID provider");
            Page workshop = chromium.window(Chromium.DESK, true, false);
            assertThat(signIn(workshop, "wim")).endsWith("/cases");
            workshop.navigate(node.url() + "/account");
            assertThat(workshop.locator("main").textContent()).contains("Harbour Road Garage");
            assertThat(workshop.locator("#current").count())
                    .as("no password here")
                    .isZero();
            assertThat(database.number(
                            "select count(*) from account where issuer is not null and password_hash is null"))
                    .isEqualTo(2);
        }
    }

    @Test
    void whatTheProviderCannotSayIsRefusedWithItsReason() {
        try (Chromium chromium = new Chromium()) {
            assertThat(at(chromium, "nora")).endsWith("/sign-in?openid=no-role");
            assertThat(at(chromium, "una")).endsWith("/sign-in?openid=account-workshop");
            assertThat(at(chromium, "eve")).as("the name of a local account").endsWith("/sign-in?openid=account-name");
            assertThat(node.client().get("/sign-in?openid=no-role").text()).contains("gives you no role");
            String forged = node.client()
                    .get("/sign-in/openid/answer/provider?code=x&state=y")
                    .header("location")
                    .orElse("");
            assertThat(forged).contains("/sign-in?openid=");
        }
    }

    private String at(Chromium chromium, String user) {
        return signIn(chromium.window(Chromium.DESK, true, false), user);
    }

    /** Signs in at the provider and returns the address where that ends. */
    private String signIn(Page page, String user) {
        page.navigate(node.url() + "/sign-in");
        page.click("text=Sign in with Invented Distribution");
        page.fill("#username", user);
        page.fill("#password", OpenIdProvider.PASSWORD);
        page.click("button[type=submit]");
        page.waitForURL(url -> url.startsWith(node.url()));
        return page.url();
    }

    private void passwordOf(Page page, String user) {
        page.navigate(node.url() + "/sign-in");
        page.fill("#username", user);
        page.fill("#password", Server.PASSWORD);
        page.click("form button");
        page.waitForURL("**/account/**");
    }

    private static JsonObject authenticator() {
        return JsonParser.parseString("{\"options\":{\"protocol\":\"ctap2\",\"transport\":\"internal\","
                        + "\"hasResidentKey\":true,\"hasUserVerification\":true,\"isUserVerified\":true,"
                        + "\"automaticPresenceSimulation\":true}}")
                .getAsJsonObject();
    }
}
