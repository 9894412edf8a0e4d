package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The way of a technician at the vehicle, on a touch screen of 390 × 844. */
@ServerTest
class PhoneTest {

    /** Smallest height of what a finger in a glove hits, px. */
    private static final double TARGET = 48;

    @Autowired
    private Server server;

    @Autowired
    private CaseService cases;

    @Autowired
    private EvidenceArchive archive;

    private Chromium chromium;

    @BeforeEach
    void open() {
        chromium = new Chromium();
    }

    @AfterEach
    void close() {
        chromium.close();
    }

    @Test
    void theCasePageAnswersFirst() {
        Server.User user = server.newUser(Role.WORKSHOP);
        SentCase sent = SentCase.of(server.as(user), Scenario.SENSOR_READS_HIGH, 4731);
        Page page = signedIn(user);
        page.navigate(server.url() + "/cases/" + sent.number());
        for (String part : List.of(".conclusion", ".battery-verdict", ".answer .next", ".answer .primary")) {
            BoundingBox box = page.locator(part).first().boundingBox();
            assertThat(box.y + box.height).as(part).isLessThanOrEqualTo(Chromium.PHONE_HEIGHT);
        }
        assertThat(page.locator(".answer .primary").count()).isEqualTo(1);
        assertThat(page.locator("#panel-evidence").isVisible()).isFalse();
        page.locator(".sections a[href='#panel-recordings']").tap();
        assertThat(page.locator("#panel-recordings").isVisible()).isTrue();
        page.waitForSelector("[data-part=plot][data-drawn]");
        page.locator(".sections a[href='#panel-details']").tap();
        assertThat(page.locator("#facts").isVisible()).isTrue();
        assertThat(page.locator("#panel-recordings").isVisible()).isFalse();
        assertThat(height(page)).isLessThan(6 * Chromium.PHONE_HEIGHT);

        page.locator(".sections a[href='#panel-evidence']").tap();
        page.setInputFiles("#file", new FilePayload("charging.json", "application/json", """
                        {"kind":"charging-test","takenAt":"2026-03-04T09:00:00+01:00","idleVoltageV":14.2,"temperatureC":18}""".getBytes()));
        page.locator("#upload button").tap();
        page.waitForSelector(".answer .changed");
        assertThat(page.locator(".conclusion").boundingBox().y).isBetween(-1.0, 300.0);
        assertThat(Chromium.overflow(page)).isZero();
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void leadsFromTheComplaintThroughATest() {
        Server.User user = server.newUser(Role.WORKSHOP);
        Page page = signedIn(user);
        page.navigate(server.url() + "/cases/new");
        page.fill("#batterySerial", Pairs.serial());
        page.fill("#vin", Pairs.vin());
        page.locator("main form button:not([type=button])").first().tap();
        page.waitForURL("**/cases/V-*");
        CaseNumber number = CaseNumber.parse(page.url().substring(page.url().lastIndexOf('/') + 1));
        page.locator(".answer .primary").tap();
        page.waitForURL("**/tests");
        smallTargets(page);
        page.locator("text=It does not start or starts slowly").tap();
        page.waitForURL("**/tests");
        assertThat(page.textContent(".guide > li.first h2")).contains("Battery test");
        assertThat(page.textContent(".guide > li.first")).contains("Caution", "hydrogen", "posts");
        page.locator(".guide > li.first .button").tap();
        page.waitForURL("**/tests/battery-test");
        smallTargets(page);

        page.fill("#v-restVoltageV", "126");
        page.locator("#v-temperatureC").tap();
        assertThat(page.textContent("#v-restVoltageV-error")).contains("0 – 20 V");
        page.fill("#v-temperatureC", "-4");
        page.reload();
        assertThat(page.inputValue("#v-temperatureC")).as("a draft survives").isEqualTo("-4");
        page.fill("#v-restVoltageV", "12,61");
        page.fill("#v-crankingCurrentA", "612");
        page.locator(".chips label:has-text('EN')").tap();
        page.locator("[data-typed] .primary").tap();
        page.waitForURL("**/cases/" + number);
        assertThat(page.textContent("main")).contains("The test is stored and assessed");
        assertThat(page.locator(".answer .changed").count()).isEqualTo(1);

        EvidenceItem item =
                archive.ofCase(cases.require(user.actor(), number).id()).get(0);
        assertThat(item.origin()).isEqualTo(Origin.TYPED);
        assertThat(item.receivedBy()).isEqualTo(user.name());
        assertThat(item.ignored()).isEmpty();
        String record = server.as(user)
                .get("/api/v1/evidence/" + item.id() + "/content")
                .text();
        assertThat(record)
                .contains("\"restVoltageV\":12.61", "\"temperatureC\":-4", "\"origin\":\"typed\"")
                .contains("\"enteredBy\":\"" + user.name() + "\"");
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void keepsTypedValuesThatTheServerRefuses() {
        Server.User user = server.newUser(Role.WORKSHOP);
        SentCase sent = SentCase.open(server.as(user));
        Page page = chromium.window(Chromium.PHONE, false, true);
        Chromium.signIn(page, server, user);
        page.navigate(server.url() + "/cases/" + sent.number() + "/tests/charging-test");
        page.fill("#v-idleVoltageV", "fourteen");
        page.fill("#v-temperatureC", "21,5");
        page.click("[data-typed] .primary");
        assertThat(page.textContent("#v-idleVoltageV-error")).contains("fourteen", "not a number");
        assertThat(page.inputValue("#v-idleVoltageV")).isEqualTo("fourteen");
        assertThat(page.inputValue("#v-temperatureC")).isEqualTo("21,5");
        page.fill("#v-idleVoltageV", "14,2");
        page.click("[data-typed] .primary");
        page.waitForURL("**/cases/" + sent.number());
        assertThat(page.textContent("#evidence")).contains("charging-test", "typed in");
    }

    private Page signedIn(Server.User user) {
        Page page = chromium.phone();
        Chromium.signIn(page, server, user);
        return page;
    }

    private static double height(Page page) {
        return ((Number) page.evaluate("document.documentElement.scrollHeight")).doubleValue();
    }

    /** Everything that is tapped has the height of a thumb; links within a text need not. */
    private static void smallTargets(Page page) {
        List<String> small = new ArrayList<>();
        for (Locator one : page.locator(
                        "main button, main .button, main summary, main input:not([type=hidden]):not([type=radio]), "
                                + "main .chips label, main .sections a")
                .all()) {
            BoundingBox box = one.isVisible() ? one.boundingBox() : null;
            if (box != null
                    && box.height > 1
                    && box.height < TARGET
                    && !page.evaluate(
                                    "e => !!e.closest('.unit') && e.closest('.unit').offsetHeight >= 48",
                                    one.elementHandle())
                            .equals(true)) {
                small.add(one.evaluate("e => e.outerHTML.slice(0, 80)") + " " + box.height);
            }
        }
        assertThat(small).isEmpty();
        assertThat(Chromium.overflow(page)).isZero();
    }
}
