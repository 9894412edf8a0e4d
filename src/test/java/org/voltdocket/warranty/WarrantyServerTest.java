package org.voltdocket.warranty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** Terms on the running server: who records them, which ones count, and that a decision keeps its own. */
@ServerTest
class WarrantyServerTest {

    @Autowired
    private Server server;

    @Autowired
    private WarrantyTermsService terms;

    @Autowired
    private JdbcClient db;

    private WarrantyTermsEntry record(String use, String from, String months, String km) {
        return terms.record(
                server.user(Role.ADMIN).actor(),
                new WarrantyTermsForm.Form("", "gel", use, from, months, "", km, "invented for a test"));
    }

    /** A gel battery sold at the end of January 2019; 7000 km since fitting. */
    private String claimed(Client workshop, String use) {
        Answer opened = workshop.postJson("/api/v1/cases", """
                {"batterySerial":"%s","vin":"%s","battery":{"chemistry":"gel","soldOn":"2019-01-31","fittedOdometerKm":1000},
                 "vehicle":{"odometerKm":8000}}
                """.formatted(Pairs.serial(), Pairs.vin()));
        String api = "/api/v1/cases/" + opened.json().get("number").stringValue();
        Answer claim = workshop.postJson(
                api + "/claim", "{\"amount\":\"100.00\",\"currency\":\"EUR\",\"useClass\":\"" + use + "\"}");
        assertThat(claim.status()).as(claim.toString()).isEqualTo(201);
        return api;
    }

    @Test
    void theTermsInForceOnTheDayOfSaleCountAndADecisionKeepsItsSum() {
        record("commercial", "2018-01-01", "120", "");
        record("commercial", "2019-02-01", "1", "10");
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        Client clerk = server.as(Role.CLERK);
        String api = claimed(workshop, "commercial");
        JsonNode sum = clerk.get(api).json().at("/claim/warranty");
        assertThat(sum.get("standing").stringValue()).isEqualTo("free");
        assertThat(sum.get("due").stringValue()).isEqualTo("100.00");
        assertThat(sum.at("/terms/validFrom").stringValue()).isEqualTo("2018-01-01");
        assertThat(sum.get("said").toString()).contains("100.00 EUR × 100 % = 100.00 EUR", "31 Jan 2019", "commercial");

        workshop.postJson(api + "/claim/submit", "{}");
        clerk.postJson(api + "/claim/take", "{}");
        clerk.postJson(api + "/claim/goodwill", "{\"reason\":\"A good customer.\"}");
        record("commercial", "2018-01-01", "120", "6500");
        JsonNode decided = clerk.get(api).json().at("/claim/warranty");
        assertThat(decided).as("as it was decided").isEqualTo(sum);
        String later = claimed(workshop, "commercial");
        JsonNode outside = clerk.get(later).json().at("/claim/warranty");
        assertThat(outside.get("standing").stringValue()).isEqualTo("outside");
        assertThat(outside.at("/outside/km").intValue()).isEqualTo(500);
        assertThat(outside.get("due").stringValue()).isEqualTo("0.00");
        assertThat(outside.get("said").toString()).contains("500 km over the limit");
    }

    @Test
    void withoutTermsNoSumIsMadeUp() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String api = claimed(workshop, "taxi");
        JsonNode sum = workshop.get(api).json().at("/claim/warranty");
        assertThat(sum.get("standing").stringValue()).isEqualTo("no-terms");
        assertThat(sum.has("due")).isFalse();
    }

    @Test
    void aTypesOwnTermsComeBeforeThoseOfItsChemistry() {
        server.user(Role.ADMIN);
        terms.record(
                server.user(Role.ADMIN).actor(),
                new WarrantyTermsForm.Form(
                        "test-9/gel", "", "private", "2001-01-01", "36", "48: 50", "", "invented for a test"));
        record("private", "2001-01-01", "12", "");
        LocalDate day = LocalDate.of(2001, 6, 1);
        assertThat(terms.inForce(Optional.of("TEST-9/GEL"), Chemistry.GEL, UseClass.PRIVATE, day)
                        .orElseThrow()
                        .freeMonths())
                .isEqualTo(36);
        assertThat(terms.inForce(Optional.of("TEST-8/GEL"), Chemistry.GEL, UseClass.PRIVATE, day)
                        .orElseThrow()
                        .freeMonths())
                .isEqualTo(12);
        assertThat(terms.inForce(Optional.empty(), Chemistry.GEL, UseClass.PRIVATE, day.minusYears(1)))
                .isEmpty();
        assertThat(terms.inForce(Optional.empty(), null, UseClass.PRIVATE, day)).isEmpty();
    }

    @Test
    void anAdministratorRecordsOnThePageAndNothingRecordedChanges() {
        Client admin = server.browser(server.newUser(Role.ADMIN));
        Map<String, String> form = Map.of(
                "batteryType",
                "PAGE-TEST-1",
                "use",
                "private",
                "validFrom",
                "2026-02-01",
                "freeMonths",
                "24",
                "proRata",
                "36: 50",
                "mileageKm",
                "60000",
                "reason",
                "agreed with the supplier in January");
        assertThat(admin.postForm("/warranty", form).status()).isEqualTo(302);
        assertThat(admin.get("/warranty").text())
                .contains("PAGE-TEST-1", "through month 36: 50 %", "agreed with the supplier in January");
        assertThat(server.browser(server.newUser(Role.CLERK))
                        .postForm("/warranty", form)
                        .status())
                .isEqualTo(403);
        for (String change : new String[] {
            "update warranty_terms set free_months = 1",
            "delete from warranty_pro_rata",
            "truncate warranty_terms cascade"
        }) {
            assertThatThrownBy(() -> db.sql(change).update()).as(change).hasStackTraceContaining("permission denied");
        }
    }
}
