package org.voltdocket.casefile.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Opening a case by the form, without script. */
@ServerTest
class NewCasePageControllerTest {

    /** Example of 49 CFR 565.15(c). */
    private static final String VIN = "1M8GDM9AXKP042788";

    @Autowired
    private Server server;

    @Test
    void suggestsAMisreadVinAndTakesItOnlyWhenConfirmed() {
        Client browser = server.browser(server.newUser(Role.WORKSHOP));
        browser.get("/cases/new");
        String misread = VIN.replace("P042788", "PO42788");
        Answer refused = browser.postForm("/cases/new", Map.of("batterySerial", "PG-SUGGEST-1", "vin", misread));
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.text()).contains("name=\"confirmedVin\" value=\"" + VIN + "\"");
        Answer opened = browser.postForm(
                "/cases/new", Map.of("batterySerial", "PG-SUGGEST-1", "vin", misread, "confirmedVin", VIN));
        assertThat(opened.status()).isEqualTo(302);
        String address = opened.header("location").orElseThrow();
        assertThat(browser.get(address.substring(address.indexOf("/cases"))).text())
                .contains(VIN);
    }

    @Test
    void namesTheFieldThatTheCaseKnowsOtherwise() {
        Client browser = server.browser(server.newUser(Role.WORKSHOP));
        browser.get("/cases/new");
        Map<String, String> agm = Map.of("batterySerial", "PG-CONFLICT-1", "vin", VIN, "battery.chemistry", "agm");
        assertThat(browser.postForm("/cases/new", agm).status()).isEqualTo(302);
        Map<String, String> gel = Map.of("batterySerial", "PG-CONFLICT-1", "vin", VIN, "battery.chemistry", "gel");
        Answer conflict = browser.postForm("/cases/new", gel);
        assertThat(conflict.status()).isEqualTo(409);
        assertThat(conflict.text()).contains("id=\"battery-chemistry-error\"").contains("The case has AGM");
    }
}
