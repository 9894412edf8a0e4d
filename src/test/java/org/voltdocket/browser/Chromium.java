package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.voltdocket.support.Server;

/**
 * Headless Chromium of the machine; tests fail where it is missing, for a page nobody looked at is not proven. The path
 * may be told by the environment variable {@code CHROMIUM}.
 */
final class Chromium implements AutoCloseable {

    static final int DESK = 1280;
    static final int PHONE = 390;
    static final int PHONE_HEIGHT = 844;

    private static final int HEIGHT = 900;
    private static final double PATIENCE_MS = 90_000;
    private static final List<String> ARGUMENTS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync");

    private static final String VISUAL_RULES = "['color-contrast', 'target-size', 'scrollable-region-focusable']";
    private static final String RUN_AXE = """
            async () => {
              const options = { resultTypes: ['violations'], preload: false, ...%s };
              const { violations } = await axe.run(document, options);
              return violations
                .filter(rule => rule.impact === 'serious' || rule.impact === 'critical')
                .flatMap(rule => rule.nodes.map(node => rule.id + ' ' + node.html));
            }
            """;

    private final Playwright playwright;
    private final Browser browser;
    private final List<String> complaints = new ArrayList<>();

    /** @param more arguments of the browser, such as those of its fake camera */
    Chromium(String... more) {
        Path program = Path.of(System.getenv().getOrDefault("CHROMIUM", "/usr/bin/chromium"));
        assertThat(Files.isExecutable(program))
                .as("no Chromium at %s: install it, or say where it is in the environment variable CHROMIUM", program)
                .isTrue();
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(program)
                        .setArgs(Stream.concat(ARGUMENTS.stream(), Arrays.stream(more))
                                .toList()));
    }

    /** A fresh window, not signed in; what its console complains of is collected. */
    Page window(int width, boolean script, boolean dark) {
        return open(new Browser.NewContextOptions()
                .setViewportSize(width, HEIGHT)
                .setJavaScriptEnabled(script)
                .setColorScheme(dark ? ColorScheme.DARK : ColorScheme.LIGHT));
    }

    /** A fresh window of a phone with a touch screen of 390 × 844. */
    Page phone() {
        return open(new Browser.NewContextOptions()
                .setViewportSize(PHONE, PHONE_HEIGHT)
                .setHasTouch(true)
                .setIsMobile(true)
                .setPermissions(List.of("camera")));
    }

    private Page open(Browser.NewContextOptions options) {
        BrowserContext context = browser.newContext(options);
        context.setDefaultTimeout(PATIENCE_MS);
        context.setDefaultNavigationTimeout(PATIENCE_MS);
        Page page = context.newPage();
        page.onPageError(error -> complaints.add(page.url() + ": " + error));
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("status of 4")) {
                complaints.add(page.url() + ": " + message.text());
            }
        });
        return page;
    }

    static void signIn(Page page, Server server, Server.User user) {
        page.navigate(server.url() + "/sign-in");
        page.fill("#username", user.name());
        page.fill("#password", Server.PASSWORD);
        page.click("main button");
        page.waitForURL("**/cases");
    }

    /** Errors of scripts and breaches of the content security policy so far. */
    List<String> complaints() {
        return complaints;
    }

    /** What axe-core calls serious or critical. */
    static List<String> seriousViolations(Page page) {
        return violations(page, "{ rules: { 'target-size': { enabled: true } } }");
    }

    /** The same for the rules alone whose result depends on width or colours. */
    static List<String> visualViolations(Page page) {
        return violations(page, "{ runOnly: " + VISUAL_RULES + " }");
    }

    /** Runs axe-core in the page itself: there are no frames, and the results of passed rules never leave the browser. */
    private static List<String> violations(Page page, String options) {
        page.evaluate("scrollTo(0, 0)"); // what lies under the fixed header counts as covered
        page.evaluate(AxeBuilder.getAxeScript());
        List<?> found = (List<?>) page.evaluate(RUN_AXE.formatted(options));
        return found.stream().map(each -> page.url() + " " + each).toList();
    }

    /** How many pixels the page is wider than the window. */
    static int overflow(Page page) {
        return ((Number) page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .intValue();
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
