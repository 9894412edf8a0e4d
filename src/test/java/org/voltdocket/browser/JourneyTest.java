package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.FilePayload;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.demo.GeneratedCase;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The way of a workshop from signing in to looking closely at a recording, in a real browser. */
@ServerTest
class JourneyTest {

    private static final String PLOT = "[data-part=plot]";

    @Autowired
    private Server server;

    @Autowired
    private CaseService cases;

    @Autowired
    private AssessmentService assessments;

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
    void opensACaseUploadsReadsTheVerdictAndZooms() {
        Server.User user = server.newUser(Role.WORKSHOP);
        GeneratedCase made = Generator.generate(Scenario.SENSOR_READS_HIGH, 4711);
        Page page = chromium.window(Chromium.DESK, true, false);
        Chromium.signIn(page, server, user);
        assertThat(page.textContent("main")).contains("You have no cases yet");

        CaseNumber number = openCase(page, made);
        page.setInputFiles("#file", payloads(made));
        page.click("#upload button");
        page.waitForFunction(
                "n => document.querySelectorAll('#upload-list > li.kept').length === n",
                made.items().size());
        page.waitForSelector("#upload-status:not(:empty)");

        CaseReference ref = cases.require(user.actor(), number);
        Assessment judged = assessments.latest(ref.id()).orElseThrow().assessment();
        assertThat(page.textContent("#part-verdict .said")).isEqualTo(judged.said());
        assertThat(page.locator("#part-causes .causes > li").count())
                .isEqualTo(judged.causes().size());
        assertThat(page.locator("table.findings tbody tr").count())
                .isEqualTo(judged.findings().size());
        unfoldsByKeys(page);

        zoomsByMouse(page);
        zoomsByKeys(page);
        tellsValues(page);
        assertThat(chromium.complaints()).isEmpty();
    }

    /** What lies inside its limits is folded behind what speaks, and a key opens it. */
    private static void unfoldsByKeys(Page page) {
        assertThat(page.locator("details.inside[open]").count()).isZero();
        assertThat(page.locator("#part-findings > .card > div > .scroll .result-inside")
                        .count())
                .isZero();
        page.locator("details.inside > summary").first().focus();
        page.keyboard().press("Enter");
        assertThat(page.locator("details.inside[open] .result-inside").first().isVisible())
                .isTrue();
    }

    @Test
    void uploadsWithoutScript() {
        GeneratedCase made = Generator.generate(Scenario.SENSOR_READS_HIGH, 4712);
        Page page = chromium.window(Chromium.PHONE, false, false);
        Chromium.signIn(page, server, server.newUser(Role.WORKSHOP));
        CaseNumber number = openCase(page, made);
        page.click(".sections a[href='#panel-evidence']");
        page.setInputFiles("#file", payloads(made));
        page.click("#upload button");
        assertThat(page.locator("ul.files > li.kept").count())
                .isEqualTo(made.items().size());
        page.navigate(server.url() + "/cases/" + number);
        assertThat(page.textContent("#part-verdict .said")).isNotBlank();
        page.click(".sections a[href='#panel-recordings']");
        assertThat(page.isVisible(PLOT)).isFalse();
        assertThat(page.textContent("figure.recording")).contains("The tables below contain the same data");
    }

    @Test
    void showsARefusalWithItsPlace() {
        GeneratedCase made = Generator.generate(Scenario.WORN, 4713);
        Page page = chromium.window(Chromium.PHONE, true, false);
        Chromium.signIn(page, server, server.newUser(Role.WORKSHOP));
        openCase(page, made);
        StringBuilder csv = new StringBuilder("time_s,measured_v\n");
        for (int i = 0; i < 30; i++) {
            csv.append(i).append(i == 10 ? ",twelve\n" : ",12.5\n");
        }
        page.click(".sections a[href='#panel-evidence']");
        page.setInputFiles(
                "#file",
                new FilePayload("broken.csv", "text/csv", csv.toString().getBytes()));
        page.click("#upload button");
        page.waitForSelector("#upload-list > li.refused table");
        assertThat(page.textContent("#upload-list > li.refused tbody tr td:nth-child(1)"))
                .isEqualTo("12");
        assertThat(page.textContent("#part-evidence")).contains("No evidence yet");
        assertThat(Chromium.overflow(page)).isZero();
    }

    private CaseNumber openCase(Page page, GeneratedCase made) {
        page.click("text=Open case");
        page.fill("#batterySerial", made.serial().value());
        page.fill("#vin", made.vin().value());
        page.click("text=Open case");
        page.waitForURL("**/cases/V-*");
        assertThat(page.textContent("h1")).contains("Case");
        return CaseNumber.parse(page.url().substring(page.url().lastIndexOf('/') + 1));
    }

    private static FilePayload[] payloads(GeneratedCase made) {
        return made.items().stream()
                .map(i -> new FilePayload(i.fileName(), "application/octet-stream", i.content()))
                .toArray(FilePayload[]::new);
    }

    private static void zoomsByMouse(Page page) {
        page.waitForSelector(PLOT + "[data-drawn]");
        page.locator(PLOT).first().scrollIntoViewIfNeeded();
        double whole = span(page);
        BoundingBox box = page.locator(PLOT + " .u-over").first().boundingBox();
        Response series = page.waitForResponse("**/series?**", () -> {
            page.mouse().move(box.x + box.width * 0.25, box.y + 40);
            page.mouse().down();
            page.mouse().move(box.x + box.width * 0.4, box.y + 60);
            page.mouse().move(box.x + box.width * 0.5, box.y + 60);
            page.mouse().up();
        });
        assertThat(series.status()).isEqualTo(200);
        assertThat(span(page)).isBetween(whole * 0.23, whole * 0.27);
        assertThat(from(page)).isBetween(whole * 0.23, whole * 0.27);
        double before = span(page);
        page.mouse().wheel(0, -300);
        eventually(page, () -> span(page) < before);
    }

    private static void zoomsByKeys(Page page) {
        page.focus(PLOT);
        page.keyboard().press("0");
        double whole = span(page);
        page.keyboard().press("+");
        page.keyboard().press("+");
        eventually(page, () -> Math.abs(span(page) - whole / 4) < whole * 0.01);
        double from = from(page);
        page.keyboard().press("ArrowRight");
        eventually(page, () -> from(page) > from);
        page.keyboard().press("Home");
        eventually(page, () -> from(page) < 1);
        String range = page.textContent("[data-part=range]");
        page.keyboard().press("End");
        eventually(page, () -> !page.textContent("[data-part=range]").equals(range));
        page.keyboard().press("0");
        eventually(page, () -> Math.abs(span(page) - whole) < 0.01);
    }

    private static void tellsValues(Page page) {
        page.focus(PLOT);
        eventually(page, () -> {
            page.keyboard().press("Shift+ArrowRight"); // new data clears the values read before
            return page.textContent("[data-part=readout]").contains("Measured voltage");
        });
        assertThat(page.textContent("[data-part=readout]")).contains(" V").contains("Regime");
    }

    private static void eventually(Page page, BooleanSupplier holds) {
        for (int i = 0; i < 100 && !holds.getAsBoolean(); i++) {
            page.waitForTimeout(100);
        }
        assertThat(holds.getAsBoolean()).isTrue();
    }

    private static double from(Page page) {
        return Double.parseDouble(page.getAttribute(PLOT, "data-from"));
    }

    private static double span(Page page) {
        return Double.parseDouble(page.getAttribute(PLOT, "data-to")) - from(page);
    }
}
