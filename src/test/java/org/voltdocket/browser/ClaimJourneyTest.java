package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.demo.Scenario;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.PrintedText;
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

        openClaim(owner, address);
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
        assertThat(state(owner)).isEqualTo("submitted");

        desk.navigate(server.url() + "/desk?order=newest");
        look(desk, "desk");
        desk.fill("#q", sent.number());
        desk.waitForURL(url -> url.contains("q=" + sent.number()));
        assertThat(desk.textContent("#count")).startsWith("1 claim");
        assertThat(desk.textContent("#found")).contains(sent.number(), "submitted", "129.90 EUR");
        desk.click("h1");
        desk.keyboard().press("j");
        assertThat(desk.evaluate("document.activeElement.textContent")).isEqualTo(sent.number());
        desk.keyboard().press("t");
        desk.waitForSelector("#taken:has-text('review started')");
        look(desk, "taken");
        desk.keyboard().press("?");
        desk.waitForSelector("#keys[open]");
        desk.keyboard().press("j");
        desk.keyboard().press("o");
        desk.waitForURL("**/cases/" + sent.number());
        look(desk, "in-review");
        desk.click("#claim details summary:has-text('Request evidence')");
        desk.check("#claim input[value=charging-test]");
        desk.click("#claim button:has-text('Send request')");
        assertThat(state(desk)).isEqualTo("evidence requested");

        openClaim(owner, address);
        assertThat(owner.textContent("#claim")).contains("Charging test", "outstanding");
        look(owner, "evidence-asked");
        press(owner, "answer");
        desk.navigate(address);
        desk.check("#claim input[value=decline]");
        desk.fill("#claim-reason", "No.");
        desk.click("#claim button:has-text('Decide claim')");
        assertThat(desk.textContent("#claim [role=alert]")).contains("40 characters");
        assertThat(desk.isChecked("#claim input[value=decline]")).isTrue();
        assertThat(desk.inputValue("#claim-reason")).isEqualTo("No.");
        look(desk, "refused");
        desk.check("#claim input[value=goodwill]");
        desk.fill("#claim-reason", "Third battery in this vehicle, and the workshop helped us well.");
        desk.fill("#claim-paid", "60");
        desk.click("#claim button:has-text('Decide claim')");
        assertThat(state(desk)).isEqualTo("goodwill");
        assertThat(desk.textContent("#claim")).contains("60.00 EUR", "Third battery");
        look(desk, "decided");

        openClaim(owner, address);
        assertThat(owner.textContent("#claim")).contains("60.00 EUR");
        look(owner, "decided");
        assertThat(wrong).isEmpty();
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void fromAskingToTheLetterBySecondPerson() throws Exception {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Server.User clerk = server.newUser(Role.CLERK);
        Server.User second = server.newUser(Role.CLERK);
        SentCase sent = SentCase.of(server.as(workshop), Scenario.SENSOR_READS_HIGH, 189);
        String address = server.url() + "/cases/" + sent.number();
        server.as(workshop).postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"DKK\"}");
        server.as(workshop).postJson(sent.api() + "/claim/submit", "{}");
        server.as(clerk).postJson(sent.api() + "/claim/take", "{}");
        Page admin = chromium.window(Chromium.PHONE, true, false);
        Chromium.signIn(admin, server, server.user(Role.ADMIN));
        admin.navigate(server.url() + "/claim-limits");
        admin.fill("#limit-currency", "DKK");
        admin.fill("#limit-amount", "50,00");
        admin.fill("#limit-reason", "As the desk agreed.");
        admin.click("form:has(#limit-amount) button");
        assertThat(admin.textContent("main")).contains("50.00 DKK", "As the desk agreed.");
        look(admin, "limits");

        Page desk = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(desk, server, clerk);
        desk.navigate(address);
        desk.click("#claim details summary:has-text('Request evidence')");
        desk.click("#claim details summary:has-text('Other evidence')");
        desk.check("#claim input[value=charging-test]");
        desk.check("#claim input[value='battery.soldOn']");
        desk.fill("#claim-ask-others", "A photograph of the date code");
        desk.click("#claim button:has-text('Send request')");

        Page owner = chromium.window(Chromium.PHONE, true, false);
        Chromium.signIn(owner, server, workshop);
        openClaim(owner, address);
        assertThat(owner.textContent("#requested-items"))
                .contains("0 of 3", "Charging test", "A photograph of the date code");
        look(owner, "asked");
        owner.setInputFiles("#requested-1-file", file("broken.json", "{\"kind\":\"charging-test\"}"));
        owner.click("#requested-1 form button");
        assertThat(owner.textContent("#requested-1 [role=alert]")).contains("broken.json");
        look(owner, "asked-refused");
        owner.setInputFiles(
                "#requested-1-file",
                file(
                        "charging.json",
                        "{\"kind\":\"charging-test\",\"takenAt\":\"2026-03-04T09:00:00+01:00\",\"idleVoltageV\":14.2,\"temperatureC\":18}"));
        owner.click("#requested-1 form button");
        assertThat(owner.textContent("#requested-1")).contains("received", "charging.json");
        owner.fill("#requested-2-fact", "2025-10-01");
        owner.click("#requested-2 form:has(#requested-2-fact) button");
        owner.fill("#requested-3-words", "The label is gone.");
        owner.click("#requested-3 form button");
        assertThat(owner.textContent("#requested-items")).contains("3 of 3", "The label is gone.");
        look(owner, "asked-answered");
        press(owner, "answer");

        desk.navigate(address);
        assertThat(desk.textContent("#requested-items")).contains("3 of 3", "The label is gone.");
        desk.check("#claim input[value=goodwill]");
        desk.fill("#claim-reason", "The workshop helped us to find the sensor.");
        desk.click("#claim button:has-text('Decide claim')");
        assertThat(state(desk)).isEqualTo("in review");
        assertThat(desk.textContent("#proposal")).contains("129.90 DKK", "50.00 DKK", "another clerk");
        look(desk, "proposed");
        openClaim(owner, address);
        assertThat(owner.textContent("main")).doesNotContain("second person");

        Page other = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(other, server, second);
        other.navigate(server.url() + "/desk?taker=second&q=" + sent.number());
        assertThat(other.textContent("main table")).contains(sent.number(), clerk.name());
        look(other, "desk-second");
        other.navigate(address);
        look(other, "second");
        press(other, "refuse");
        assertThat(other.textContent("#claim [role=alert]")).contains("needs a reason");
        press(other, "confirm");
        assertThat(state(other)).isEqualTo("goodwill");
        assertThat(other.textContent("#claim")).contains(clerk.name(), second.name());
        look(other, "confirmed");

        openClaim(owner, address);
        String href = owner.getAttribute("#claim a:has-text('Letter')", "href");
        byte[] letter = owner.request().get(server.url() + href).body();
        String text = PrintedText.bare(PrintedText.of(letter));
        assertThat(text).contains(PrintedText.bare("We pay 129.90 DKK as goodwill."), second.name());
        keep("letter.pdf", letter);
        keep("report.pdf", owner.request().get(address + "/claims/1/report.pdf").body());
        sent.send(
                server.as(workshop),
                "late.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":10.2,\"temperatureC\":18,\"hoursSinceEngineStop\":20,\"chargedBefore\":true}"
                        .getBytes(StandardCharsets.UTF_8),
                null);
        openClaim(owner, address);
        assertThat(owner.textContent("#basis-change")).contains("late.json");
        look(owner, "basis-change");
        owner.navigate(server.url() + "/account");
        owner.fill("#email", "workshop@example.org");
        owner.click("form:has(#email) button");
        assertThat(owner.inputValue("#email")).isEqualTo("workshop@example.org");
        look(owner, "account");
        assertThat(wrong).isEmpty();
        assertThat(chromium.complaints()).isEmpty();
    }

    private static FilePayload file(String name, String content) {
        return new FilePayload(name, "application/json", content.getBytes(StandardCharsets.UTF_8));
    }

    private static void keep(String name, byte[] content) throws IOException {
        String folder = System.getProperty("voltdocket.pictures");
        if (folder != null) {
            Files.write(Path.of(folder, name), content);
        }
    }

    @Test
    void aFilterThatCannotBeIsSaidWhileOneTypes() {
        Page desk = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(desk, server, server.newUser(Role.CLERK));
        desk.navigate(server.url() + "/desk");
        desk.fill("#least", "9O");
        desk.waitForSelector("#refused [role=alert]");
        assertThat(desk.textContent("#refused")).contains("Probability, at least %", "from 0 to 100", "9O");
        assertThat(desk.textContent("#found")).contains("Correct the filter first");
        assertThat(desk.getAttribute("#least", "aria-invalid")).isEqualTo("true");
        assertThat(desk.inputValue("#least")).isEqualTo("9O");
        assertThat(desk.evaluate("document.activeElement.id")).isEqualTo("least");
        look(desk, "desk-refused");
        desk.fill("#least", "90");
        desk.waitForURL(url -> url.contains("least=90"));
        assertThat(desk.locator("#refused [role=alert]").count()).isZero();
        assertThat(desk.getAttribute("#least", "aria-invalid")).isNull();
        assertThat(wrong).isEmpty();
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void theWorkshopObjectsAndReadsTheAnswer() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        SentCase sent = SentCase.open(server.as(workshop));
        String reason = "{\"reason\":\"The evidence does not show that the battery failed by itself.\"}";
        server.as(workshop).postJson(sent.api() + "/claim", "{\"amount\":\"80\",\"currency\":\"EUR\"}");
        server.as(workshop).postJson(sent.api() + "/claim/submit", "{}");
        server.as(Role.CLERK).postJson(sent.api() + "/claim/take", "{}");
        server.as(Role.CLERK).postJson(sent.api() + "/claim/decline", reason);
        Page owner = chromium.window(Chromium.PHONE, true, false);
        Chromium.signIn(owner, server, workshop);
        owner.navigate(server.url() + "/cases/" + sent.number() + "#claim");
        owner.click("#claim summary:has-text('Object to the decision')");
        owner.fill("#objection-reason", "The test was taken cold.");
        owner.click("#objections button");
        assertThat(owner.textContent("#objections")).contains("The test was taken cold.", "Waiting for an answer");
        look(owner, "objection");

        Page desk = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(desk, server, server.user(Role.CLERK));
        desk.navigate(server.url() + "/desk");
        desk.click("#objections a");
        assertThat(desk.textContent("#found")).contains(sent.number(), "objection");
        look(desk, "desk-objections");
        desk.click("#found a.number:has-text('" + sent.number() + "')");
        desk.fill("#objection-answer", "The rule book reckons the temperature in.");
        look(desk, "objection-answer");
        desk.click("#objections button:has-text('Answer')");
        assertThat(desk.textContent("#objections")).contains("reckons the temperature in");
        owner.reload();
        assertThat(owner.textContent("#objections")).contains("reckons the temperature in");
        assertThat(owner.isVisible("#claim summary:has-text('Object to the decision')"))
                .isTrue();
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

    /** Opens the claim of a case. Where the page is open already, the address alone would not load it again. */
    private static void openClaim(Page page, String address) {
        page.navigate(address + "#claim");
        page.reload();
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
            if (page.locator("#claim").count() == 1) {
                Path panel = Path.of(folder, page.viewportSize().width + "-" + name + "-claim.png");
                page.locator("#claim").screenshot(new Locator.ScreenshotOptions().setPath(panel));
            }
        }
        page.evaluate("document.querySelectorAll('#claim details').forEach(d => { d.open = false; })");
    }
}
