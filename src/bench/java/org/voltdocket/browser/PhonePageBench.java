package org.voltdocket.browser;

import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The first view of a case on a phone of 390 × 844 over a slow 4G line (150 ms, 1.6 Mbit/s down, 750 kbit/s up), by the browser's
 * performance entries: bytes without the recording, largest contentful paint, layout shift, and the longest interaction while each
 * section is opened. Run against a server that runs, such as the demo:
 *
 * <pre>mvn -q -Pbench test-compile exec:exec -Dbench.main=org.voltdocket.browser.PhonePageBench
 *   -Dbench="http://localhost:8080 workshop voltdocket-demo /cases/V-000-00J-F 5"</pre>
 */
public final class PhonePageBench {

    private static final String OBSERVE = """
            window.seen = { lcp: 0, shift: 0, interaction: 0 };
            new PerformanceObserver(l => l.getEntries().forEach(e => { seen.lcp = e.startTime; }))
              .observe({ type: 'largest-contentful-paint', buffered: true });
            new PerformanceObserver(l => l.getEntries().forEach(e => { if (!e.hadRecentInput) seen.shift += e.value; }))
              .observe({ type: 'layout-shift', buffered: true });
            new PerformanceObserver(l => l.getEntries().forEach(e => { seen.interaction = Math.max(seen.interaction, e.duration); }))
              .observe({ type: 'event', durationThreshold: 16, buffered: true });
            """;

    private static final String BYTES = """
            performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))
              .filter(e => !e.name.includes('/series')).reduce((sum, e) => sum + e.transferSize, 0)
            """;

    private PhonePageBench() {}

    /** Arguments: address of the server, account, password, path of a case, repetitions. */
    public static void main(String[] arguments) {
        String program = System.getenv().getOrDefault("CHROMIUM", "/usr/bin/chromium");
        List<double[]> rows = new ArrayList<>();
        try (Playwright playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")))) {
            Browser browser = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(Path.of(program))
                            .setArgs(List.of("--no-sandbox", "--disable-background-networking")));
            for (int i = 0; i < Integer.parseInt(arguments[4]); i++) {
                rows.add(measure(browser, arguments));
            }
        }
        System.out.println("| bytes | largest contentful paint, ms | layout shift | longest interaction, ms |");
        System.out.println("|--:|--:|--:|--:|");
        rows.forEach(row -> System.out.println(
                String.format(Locale.ROOT, "| %.0f | %.0f | %.3f | %.0f |", row[0], row[1], row[2], row[3])));
    }

    private static double[] measure(Browser browser, String[] arguments) {
        try (BrowserContext context = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(390, 844)
                .setHasTouch(true)
                .setIsMobile(true)
                .setServiceWorkers(ServiceWorkerPolicy.BLOCK))) {
            context.addInitScript(OBSERVE);
            Page page = context.newPage();
            page.navigate(arguments[0] + "/sign-in");
            page.fill("#username", arguments[1]);
            page.fill("#password", arguments[2]);
            page.click("main button");
            page.waitForURL("**/cases");
            CDPSession session = context.newCDPSession(page);
            session.send("Network.clearBrowserCache");
            JsonObject line = new JsonObject();
            line.addProperty("offline", false);
            line.addProperty("latency", 150);
            line.addProperty("downloadThroughput", 1_600_000 / 8);
            line.addProperty("uploadThroughput", 750_000 / 8);
            session.send("Network.enable");
            session.send("Network.emulateNetworkConditions", line);
            page.navigate(arguments[0] + arguments[3]);
            page.waitForTimeout(3000);
            double bytes = number(page, BYTES);
            for (int i = 0; i < page.locator(".sections a").count(); i++) {
                page.locator(".sections a").nth(i).tap();
                page.waitForTimeout(400);
            }
            return new double[] {
                bytes, number(page, "seen.lcp"), number(page, "seen.shift"), number(page, "seen.interaction")
            };
        }
    }

    private static double number(Page page, String expression) {
        return ((Number) page.evaluate(expression)).doubleValue();
    }
}
