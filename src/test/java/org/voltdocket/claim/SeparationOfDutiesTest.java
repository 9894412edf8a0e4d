package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Whoever uploaded evidence or changed facts neither decides the claim nor confirms a decision. */
@ServerTest
class SeparationOfDutiesTest {

    private static final String REASON =
            "{\"reason\":\"The battery passed every test, and the vehicle is the cause here.\"}";

    @Autowired
    private Server server;

    @Test
    void whoUploadedEvidenceDoesNotDecideAndThePageSaysSoBefore() {
        String number = claimed();
        Server.User involved = server.newUser(Role.CLERK);
        assertThat(server.as(involved)
                        .upload(People.evidence(number), "b.json", People.battery(), null)
                        .status())
                .isEqualTo(201);
        String claim = "/api/v1/cases/" + number + "/claim";
        Client clerk = server.as(involved);
        assertThat(clerk.postJson(claim + "/take", "{}").status()).isEqualTo(200);
        Answer refused = clerk.postJson(claim + "/decline", REASON);
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.json().get("type").stringValue()).endsWith("#claim-same-duties");
        assertThat(refused.json().get("detail").stringValue()).contains("You uploaded evidence", "ask another clerk");
        assertThat(refused.json().get("contributions").get(0).stringValue()).isEqualTo("evidence");
        String page = server.browser(involved).get("/cases/" + number).text();
        assertThat(page)
                .contains("Another person decides this claim", "You uploaded evidence.")
                .doesNotContain("id=\"claim-paid\"", "??");
        Server.User other = server.newUser(Role.CLERK);
        assertThat(server.browser(other).get("/cases/" + number).text())
                .contains("id=\"claim-paid\"")
                .doesNotContain("Another person decides this claim");
        assertThat(server.as(other).postJson(claim + "/decline", REASON).status())
                .isEqualTo(200);
    }

    @Test
    void whoChangedFactsDoesNotDecide() {
        String number = claimed();
        Server.User involved = server.newUser(Role.ADMIN);
        Client admin = server.as(involved);
        assertThat(admin.patchJson("/api/v1/cases/" + number, "{\"complaint\":\"slow in the morning\"}")
                        .status())
                .isEqualTo(200);
        String claim = "/api/v1/cases/" + number + "/claim";
        assertThat(admin.postJson(claim + "/take", "{}").status()).isEqualTo(200);
        Answer refused = admin.postJson(claim + "/goodwill", REASON);
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.json().get("detail").stringValue()).contains("You changed facts");
    }

    private String claimed() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = workshop.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                .json()
                .get("number")
                .stringValue();
        workshop.upload(People.evidence(number), "b.json", People.battery(), null);
        String claim = "/api/v1/cases/" + number + "/claim";
        assertThat(workshop.postJson(claim, "{\"amount\":\"99.00\",\"currency\":\"EUR\"}")
                        .status())
                .isEqualTo(201);
        assertThat(workshop.postJson(claim + "/submit", "{}").status()).isEqualTo(200);
        return number;
    }
}
