package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;
import tools.jackson.databind.JsonNode;

/** A phone sends files to a real server process that is killed on the way, and without a connection. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class UploadSurvivesTest {

    /** Upload of a slow mobile network, bytes per second. */
    private static final int SLOW = 250_000;

    private OwnDatabase database;
    private Node node;
    private People people;
    private Chromium chromium;

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        database = new OwnDatabase(folder.resolve("pg"));
        node = new Node(database, folder.resolve("node"));
        people = new People(node);
        chromium = new Chromium();
    }

    @AfterAll
    void end() throws Exception {
        chromium.close();
        node.close();
        database.close();
    }

    @Test
    void continuesWhenTheServerIsKilledAndNothingIsHalfStored() throws Exception {
        String number = people.open(node);
        Page page = signedIn();
        page.navigate(url() + "/cases/" + number + "#upload");
        slow(page, SLOW);
        byte[] drive = recording(120_000, 1);
        page.setInputFiles("#file", new FilePayload[] {payload("a.csv", drive), payload("b.csv", recording(900, 2))});
        page.locator("#upload button").tap();
        page.waitForFunction("() => [...document.querySelectorAll('#upload-list progress')].some(p => p.value > 0.3)");
        node.kill();
        slow(page, -1);
        node.start();
        assertThat(evidence(number)).as("nothing half-stored").isEmpty();
        page.waitForFunction("() => document.querySelectorAll('#upload-list > li.kept').length === 2");
        JsonNode stored = evidence(number);
        assertThat(stored).hasSize(2);
        String id = stored.get(0).get("id").stringValue();
        assertThat(workshop().get("/api/v1/evidence/" + id + "/content").body()).isEqualTo(drive);
        page.waitForSelector(".answer .changed");
    }

    @Test
    void filesAndTypedTestsWaitWithoutAConnection() {
        String number = people.open(node);
        Page page = signedIn();
        String address = url() + "/cases/" + number;
        page.navigate(address + "/tests/charging-test");
        page.waitForFunction("() => navigator.serviceWorker.ready.then(r => !!navigator.serviceWorker.controller)");
        page.navigate(address + "/tests/charging-test");
        page.navigate(address + "#upload");
        page.context().setOffline(true);

        page.reload();
        page.setInputFiles("#file", payload("standing.csv", recording(900, 3)));
        page.locator("#upload button").tap();
        page.waitForSelector("#upload-list li:has-text('waits on this device')");
        page.navigate(address + "/tests/charging-test");
        page.fill("#v-idleVoltageV", "14,3");
        page.fill("#v-temperatureC", "20");
        page.locator("[data-typed] .primary").tap();
        page.waitForURL("**/offline*");
        assertThat(page.locator("#kept").isVisible()).isTrue();
        page.waitForSelector("#outbox:has-text('2 items wait')");
        assertThat(evidence(number)).isEmpty();

        page.context().setOffline(false);
        page.waitForSelector("#outbox", new Page.WaitForSelectorOptions().setState(WaitForSelectorState.HIDDEN));
        JsonNode stored = evidence(number);
        assertThat(stored).hasSize(2);
        assertThat(stored.toString()).contains("\"origin\":\"typed\"", "standing.csv");
    }

    private Page signedIn() {
        Page page = chromium.phone();
        page.navigate(url() + "/sign-in");
        page.fill("#username", "shop");
        page.fill("#password", Server.PASSWORD);
        page.click("main button");
        page.waitForURL("**/cases");
        return page;
    }

    private String url() {
        return node.client().base();
    }

    private Client workshop() {
        return people.workshop(node);
    }

    private JsonNode evidence(String number) {
        return workshop().get("/api/v1/cases/" + number).json().get("evidence");
    }

    private static FilePayload payload(String name, byte[] content) {
        return new FilePayload(name, "text/csv", content);
    }

    /** @param bytesPerSecond -1 for no limit */
    private static void slow(Page page, int bytesPerSecond) {
        CDPSession session = page.context().newCDPSession(page);
        session.send("Network.enable");
        JsonObject limits = new JsonObject();
        limits.addProperty("offline", false);
        limits.addProperty("latency", 0);
        limits.addProperty("downloadThroughput", -1);
        limits.addProperty("uploadThroughput", bytesPerSecond);
        session.send("Network.emulateNetworkConditions", limits);
    }

    private static byte[] recording(int rows, long seed) {
        Random noise = new Random(seed);
        StringBuilder csv = new StringBuilder("time_s,measured_v\n");
        for (int i = 0; i < rows; i++) {
            csv.append(i).append(',').append(String.format(Locale.ROOT, "%.3f", 12.6 + noise.nextGaussian() / 100));
            csv.append('\n');
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }
}
