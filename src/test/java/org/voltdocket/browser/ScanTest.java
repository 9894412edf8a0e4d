package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.FilePayload;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Serials and VINs from labels: photos that are drawn here, and the fake camera of the browser fed from a film. */
@ServerTest
class ScanTest {

    /** The example of 49 CFR 565.15(c)(4), Table V; its check digit is X. */
    private static final String VIN = "1M8GDM9AXKP042788";

    private static final String SERIAL = "QX52-2511-05236";

    @Autowired
    private Server server;

    @TempDir
    private Path folder;

    private Chromium chromium;

    @AfterEach
    void close() {
        chromium.close();
    }

    @Test
    void readsPhotosAtAnglesBlurredAndInLowLight() {
        chromium = new Chromium();
        Page page = newCase();
        Map<String, LabelPicture> pictures = new LinkedHashMap<>();
        for (BarcodeFormat format : List.of(
                BarcodeFormat.CODE_39, BarcodeFormat.CODE_128, BarcodeFormat.DATA_MATRIX, BarcodeFormat.QR_CODE)) {
            LabelPicture label = LabelPicture.of(format, SERIAL);
            for (double angle : new double[] {0, 12, 35, 90, 180}) {
                pictures.put(format + " at " + angle, label.turned(angle));
            }
            pictures.put(format + " blurred", label.turned(7).blurred(1.5));
            pictures.put(format + " in low light", label.turned(-9).inLight(0.15));
        }
        page.locator("button[aria-label*='erial']").tap();
        List<String> unread = new ArrayList<>();
        pictures.forEach((name, picture) -> {
            page.evaluate("document.querySelector('#code-scanner').close()");
            page.locator("button[aria-label*='erial']").tap();
            page.setInputFiles(
                    "#code-scanner input[type=file]", new FilePayload("label.png", "image/png", picture.png()));
            page.waitForSelector(
                    "#code-scanner .found[aria-busy=false]",
                    new Page.WaitForSelectorOptions().setState(WaitForSelectorState.ATTACHED));
            if (!page.textContent("#code-scanner .found").contains(SERIAL)) {
                unread.add(name);
            }
        });
        assertThat(unread).isEmpty();
    }

    @Test
    void readsTheFilmOfACamera() throws IOException {
        Path film = folder.resolve("label.y4m");
        List<LabelPicture> pictures = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            pictures.add(LabelPicture.of(BarcodeFormat.CODE_39, "I" + VIN)
                    .turned(i - 6)
                    .blurred(0.8)
                    .inLight(0.6));
        }
        LabelPicture.film(film, pictures);
        chromium = new Chromium(
                "--use-fake-device-for-media-stream",
                "--use-fake-ui-for-media-stream",
                "--use-file-for-fake-video-capture=" + film);
        Page page = newCase();
        page.locator("button[aria-label*='VIN']").tap();
        page.waitForSelector("#code-scanner .found button");
        assertThat(page.inputValue("#vin"))
                .as("nothing is filled in before a choice")
                .isEmpty();
        assertThat(page.textContent("#code-scanner .found")).contains(VIN).doesNotContain("I" + VIN);
        page.locator("#code-scanner .found button").tap();
        assertThat(page.inputValue("#vin")).isEqualTo(VIN);
        page.waitForFunction("() => !document.querySelector('#code-scanner video').srcObject");
        assertThat(chromium.complaints()).isEmpty();
    }

    @Test
    void letsThePersonChooseAndNeverCorrectsSilently() {
        chromium = new Chromium();
        Page page = newCase();
        String misread = VIN.replace("0", "O");
        LabelPicture label = new LabelPicture(
                List.of(
                        new LabelPicture.Code(BarcodeFormat.CODE_128, SERIAL),
                        new LabelPicture.Code(BarcodeFormat.CODE_128, misread),
                        new LabelPicture.Code(BarcodeFormat.QR_CODE, "PART 7H0 915 105")),
                0,
                0,
                1);
        page.locator("button[aria-label*='VIN']").tap();
        page.setInputFiles("#code-scanner input[type=file]", new FilePayload("label.png", "image/png", label.png()));
        page.waitForSelector("#code-scanner .found button");
        assertThat(page.locator("#code-scanner .found button").count())
                .as("a serial is no VIN")
                .isEqualTo(1);
        assertThat(page.textContent("#code-scanner .found mark")).isEqualTo("0");
        assertThat(page.textContent("#code-scanner [role=status]")).contains("doubtful");
        page.locator("#code-scanner [data-close]").tap();
        assertThat(page.inputValue("#vin")).isEmpty();

        page.locator("button[aria-label*='erial']").tap();
        page.setInputFiles("#code-scanner input[type=file]", new FilePayload("label.png", "image/png", label.png()));
        page.waitForFunction("() => document.querySelectorAll('#code-scanner .found button').length > 1");
        page.locator("#code-scanner .found button:has-text('" + SERIAL + "')").tap();
        assertThat(page.inputValue("#batterySerial")).isEqualTo(SERIAL);

        page.fill("#vin", misread);
        page.locator("#batterySerial").tap();
        assertThat(page.inputValue("#vin")).isEqualTo(misread);
        page.locator(".offers button").tap();
        assertThat(page.inputValue("#vin")).isEqualTo(VIN);
    }

    private Page newCase() {
        Page page = chromium.phone();
        Chromium.signIn(page, server, server.newUser(Role.WORKSHOP));
        page.navigate(server.url() + "/cases/new");
        return page;
    }
}
