package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/**
 * The way of a claim in a real browser, from the workshop's draft to the clerk's decision. With the system property {@code
 * voltdocket.pictures} each stop is photographed into that folder.
 */
@ServerTest
class ClaimJourneyTest {

    @Autowired
    private Server server;

    private Chromium chromium;
    private final List<String> wrong = new ArrayList<>();

    @BeforeEach
    void open() {
        chromium = new Chromium();
    }

    @AfterEach
    void close() {
        chromium.close();
    }

    @Test
    void fromDraftToDecision() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Server.User clerk = server.newUser(Role.CLERK);
        SentCase sent = SentCase.open(server.as(workshop));
        String address = server.url() + "/cases/" + sent.number();
        Page owner = chromium.window(Chromium.PHONE, true, false);
        Page desk = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(owner, server, workshop);
        Chromium.signIn(desk, server, clerk);

        owner.navigate(address);
        look(owner, "none");
        owner.fill("#claim-amount", "lots");
        owner.click("#claim button");
        assertThat(owner.textContent("#claim [role=alert]")).contains("'amount'", "lots");
        assertThat(owner.inputValue("#claim-amount")).isEqualTo("lots");
        owner.fill("#claim-amount", "129,90");
        owner.click("#claim button");
        assertThat(state(owner)).isEqualTo("draft");
        assertThat(owner.textContent("#claim")).contains("129.90 EUR");
        look(owner, "draft");
        press(owner, "submit");
        assertThat(state(owner)).isEqualTo("handed in");

        desk.navigate(server.url() + "/cases?state=submitted&q=" + sent.number());
        assertThat(desk.textContent("main table")).contains(sent.number(), "handed in");
        look(desk, "list");
        desk.navigate(address);
        press(desk, "take");
        look(desk, "in-review");
        desk.click("#claim details summary:has-text('Ask for evidence')");
        desk.check("#claim input[value=charging-test]");
        desk.click("#claim button:has-text('Ask the workshop')");
        assertThat(state(desk)).isEqualTo("evidence asked");

        owner.navigate(address);
        assertThat(owner.textContent("#claim")).contains("Charging test", "not yet");
        look(owner, "evidence-asked");
        press(owner, "answer");
        desk.navigate(address);
        desk.check("#claim input[value=decline]");
        desk.fill("#claim-reason", "No.");
        desk.click("#claim button:has-text('Decide the claim')");
        assertThat(desk.textContent("#claim [role=alert]")).contains("40 characters");
        assertThat(desk.isChecked("#claim input[value=decline]")).isTrue();
        assertThat(desk.inputValue("#claim-reason")).isEqualTo("No.");
        look(desk, "refused");
        desk.check("#claim input[value=goodwill]");
        desk.fill("#claim-reason", "Third battery in this vehicle, and the workshop helped us well.");
        desk.fill("#claim-paid", "60");
        desk.click("#claim button:has-text('Decide the claim')");
        assertThat(state(desk)).isEqualTo("goodwill");
        assertThat(desk.textContent("#claim")).contains("60.00 EUR", "Third battery");
        look(desk, "decided");

        owner.navigate(address);
        assertThat(owner.textContent("#claim")).contains("60.00 EUR");
        look(owner, "decided");
        assertThat(wrong).isEmpty();
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void theSecondClerkIsToldWhoWasFaster() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        SentCase sent = SentCase.open(server.as(workshop));
        server.as(workshop).postJson(sent.api() + "/claim", "{\"amount\":\"80\",\"currency\":\"EUR\"}");
        server.as(workshop).postJson(sent.api() + "/claim/submit", "{}");
        Server.User faster = server.newUser(Role.CLERK);
        Page first = chromium.window(Chromium.DESK, true, false);
        Page second = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(first, server, faster);
        Chromium.signIn(second, server, server.newUser(Role.CLERK));
        first.navigate(server.url() + "/cases/" + sent.number());
        second.navigate(server.url() + "/cases/" + sent.number());
        press(first, "take");
        press(second, "take");
        assertThat(second.textContent("#claim [role=alert]")).contains("in-review", faster.name(), "'take'");
        assertThat(state(second)).isEqualTo("in review");
    }

    private static String state(Page page) {
        return page.textContent("#claim .head .tag").strip();
    }

    private static void press(Page page, String action) {
        page.click("#claim button[value=" + action + "]");
        page.waitForLoadState();
    }

    private void look(Page page, String name) {
        page.evaluate("document.querySelectorAll('#claim details').forEach(d => { d.open = true; })");
        if (Chromium.overflow(page) > 0) {
            wrong.add(name + " is too wide by " + Chromium.overflow(page));
        }
        wrong.addAll(Chromium.seriousViolations(page));
        String folder = System.getProperty("voltdocket.pictures");
        if (folder != null) {
            Page.ScreenshotOptions whole = new Page.ScreenshotOptions();
            Path file = Path.of(folder, page.viewportSize().width + "-" + name + ".png");
            page.screenshot(whole.setFullPage(true).setPath(file));
        }
        page.evaluate("document.querySelectorAll('#claim details').forEach(d => { d.open = false; })");
    }
}
