package org.voltdocket.assessment.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;

@ServerTest
class EditionServiceTest {

    private static final String WHY = "The test needs it in force for a moment.";

    @Autowired
    private Server server;

    @Autowired
    private EditionService editions;

    @Autowired
    private ShippedEditionsLoader shipped;

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcClient db;

    @Test
    void theShippedEditionsAreKeptByteForByte() throws Exception {
        Edition first = editions.require("2026.1");
        assertThat(first.origin()).isEqualTo("shipped");
        assertThat(editions.content(first.sha256()))
                .isEqualTo(Files.readAllBytes(Path.of("shared/rulebook/2026.1.yaml")));
    }

    @Test
    void thePageShowsEveryDecisionLimitWithItsMeaning() {
        String page = server.browser(server.user(Role.CLERK)).get("/rulebook").text();
        editions.rulebook()
                .decisions()
                .forEach((limit, decision) -> assertThat(page).contains("decision-" + limit.id(), decision.meaning()));
    }

    @Test
    void theDifferenceOfTwoEditionsNamesAChangedDecisionLimit() {
        Edition other =
                keep(EditionTexts.text(EditionTexts.name()).replace("leaning: {value: 0.60", "leaning: {value: 0.65"));
        assertThat(editions.difference(other.sha256()).general())
                .contains(new EditionDiff.Line("decisions.leaning.value", "0.6", "0.65"));
    }

    @Test
    void aReleasedEditionOfThisProgramThatIsAnotherOneRefusesToStart() {
        byte[] changed = EditionTexts.bytes(EditionTexts.text("2026.1") + "# changed\n");
        assertThatThrownBy(() -> shipped.keep(changed))
                .isInstanceOf(EditionMismatchException.class)
                .hasMessageContaining("2026.1")
                .hasMessageContaining("decisions rest");
        byte[] draft = EditionTexts.bytes(EditionTexts.draft(EditionTexts.text("2026.1")));
        assertThatCode(() -> shipped.keep(draft)).doesNotThrowAnyException();
        assertThat(editions.require("2026.1").released()).isTrue();
    }

    @Test
    void anEditionPutInForceJudgesTheNextCaseAndTheHistoryKeepsWhy() {
        Edition before = editions.inForce();
        Edition next = keep(EditionTexts.text(EditionTexts.name()));
        editions.putInForce(Actor.system(), next.sha256(), WHY);
        try {
            Client workshop = server.as(server.newUser(Role.WORKSHOP));
            String number = workshop.postJson(
                            "/api/v1/cases",
                            "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                    .json()
                    .get("number")
                    .stringValue();
            assertThat(workshop.get("/api/v1/cases/" + number)
                            .json()
                            .get("assessment")
                            .get("rulebook")
                            .stringValue())
                    .isEqualTo(next.name());
            assertThat(editions.history().get(0).reason()).isEqualTo(WHY);
            assertThat(trail.of("edition/" + next.name()))
                    .extracting(entry -> entry.act())
                    .containsExactly("edition-uploaded", "edition-put-in-force");
            assertThatThrownBy(() -> editions.putInForce(Actor.system(), next.sha256(), WHY))
                    .isInstanceOf(RequestException.class)
                    .hasMessageContaining("is the one in force");
        } finally {
            editions.putInForce(Actor.system(), before.sha256(), WHY);
        }
    }

    @Test
    void whatMayNotBeInForceIsRefused() {
        Edition draft = keep(EditionTexts.draft(EditionTexts.text(EditionTexts.name())));
        assertThatThrownBy(() -> editions.putInForce(Actor.system(), draft.sha256(), WHY))
                .hasMessageContaining("inTheMaking");
        Edition released = keep(EditionTexts.text(EditionTexts.name()));
        assertThatThrownBy(() -> editions.putInForce(Actor.system(), released.sha256(), " short "))
                .hasMessageContaining("10 to 2000");
        assertThatThrownBy(() -> db.sql("insert into edition_in_force (sha256, since, put_by, reason)"
                                + " values (?, now(), 'x', 'behind the back')")
                        .param(draft.sha256().hex())
                        .update())
                .hasMessageContaining("never in force");
    }

    @Test
    void aDraftMayFollowADraftButNothingFollowsAReleasedEdition() {
        String name = EditionTexts.name();
        Edition one = keep(EditionTexts.draft(EditionTexts.text(name)));
        Edition two = keep(EditionTexts.draft(EditionTexts.tilted(name)));
        assertThat(editions.require(name)).isEqualTo(two).isNotEqualTo(one);
        Edition released = keep(EditionTexts.tilted(name));
        assertThat(editions.require(name)).isEqualTo(released);
        assertThat(keep(EditionTexts.tilted(name))).as("the same bytes again").isEqualTo(released);
        assertThatThrownBy(() -> keep(EditionTexts.text(name))).hasMessageContaining("another text");
        assertThatThrownBy(() -> keep(EditionTexts.draft(EditionTexts.text(name) + "# later")))
                .hasMessageContaining("another text");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"update edition set released = true", "delete from edition", "delete from edition_in_force"})
    void editionsRefuseChange(String sql) {
        assertThatThrownBy(() -> db.sql(sql).update()).hasStackTraceContaining("permission denied");
    }

    @Test
    void thePageTakesAnEditionOrSaysWhatIsWrongByLine() {
        Client admin = server.browser(server.user(Role.ADMIN));
        Client form = admin.header("X-CSRF-TOKEN", admin.csrf());
        String wrong = EditionTexts.text(EditionTexts.name()).replace("unit: ratio", "unit: furlongs");
        Answer refused = form.upload("/editions", "wrong.yaml", wrong.getBytes(StandardCharsets.UTF_8), null);
        assertThat(refused.status()).isEqualTo(422);
        int line = wrong.substring(0, wrong.indexOf("unit: furlongs")).split("\n").length;
        assertThat(refused.text())
                .contains("<td class=\"num\">" + line + "</td>")
                .doesNotContain("??");

        String name = EditionTexts.name();
        String right = EditionTexts.text(name).replaceFirst("atMost: 1.15", "atMost: 1.155");
        assertThat(form.upload("/editions", "right.yaml", EditionTexts.bytes(right), null)
                        .status())
                .isEqualTo(302);
        String page =
                admin.get("/editions/" + editions.require(name).sha256().hex()).text();
        assertThat(page).contains("1.155", "sensor-gain", "Put in force").doesNotContain("??");
        assertThat(admin.get("/editions").text()).contains(name).doesNotContain("??");
        String address = "/editions/" + editions.require(name).sha256().hex() + "/force";
        assertThat(admin.postForm(address, Map.of("reason", "no")).text()).contains("10 to 2000 characters");
    }

    private Edition keep(String text) {
        return editions.keep(Actor.system(), EditionTexts.bytes(text));
    }
}
