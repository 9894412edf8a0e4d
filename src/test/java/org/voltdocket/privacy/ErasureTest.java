package org.voltdocket.privacy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.evidence.storage.EvidenceCheck;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;
import org.voltdocket.trail.Trail;

/** After an erasure no table holds the personal data of the case, and what rests on digests still verifies. */
@ServerTest
class ErasureTest {

    private static final String SECRET = "Ms Roe parked it at 4 Elm Lane";
    private static final String DECLINED =
            "Ms Roe was told: the battery passed every test and the vehicle is the cause.";

    @Autowired
    private Server server;

    @Autowired
    private ErasureService erasures;

    @Autowired
    private ErasureRepository store;

    @Autowired
    private Trail trail;

    @Autowired
    private EvidenceCheck evidence;

    @Autowired
    private JdbcClient db;

    private final String vin = Pairs.vin();
    private final byte[] file = ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\","
                    + "\"restVoltageV\":12.71,\"temperatureC\":18,\"note\":\"" + SECRET + vin + "\"}")
            .getBytes(StandardCharsets.UTF_8);
    private Actor admin;
    private Client workshop;
    private CaseNumber number;

    @BeforeEach
    void decidedCase() {
        admin = server.user(Role.ADMIN).actor();
        workshop = server.as(server.newUser(Role.WORKSHOP));
        number = open(workshop, Pairs.serial());
        send(workshop, number);
        String at = "/api/v1/cases/" + number;
        Client clerk = server.as(server.newUser(Role.CLERK));
        for (Answer step : List.of(
                workshop.postJson(at + "/claim", "{\"amount\":\"99.00\",\"currency\":\"EUR\"}"),
                workshop.postJson(at + "/claim/submit", "{\"reason\":\"" + SECRET + "\"}"),
                clerk.postJson(at + "/claim/take", "{}"),
                clerk.postJson(at + "/claim/decline", "{\"reason\":\"" + DECLINED + "\"}"),
                workshop.postJson(at + "/claim/objection", "{\"reason\":\"" + SECRET + "\"}"),
                clerk.postJson(at + "/claim/objection/answer", "{\"reason\":\"" + SECRET + "\"}"))) {
            assertThat(step.status()).as(step.toString()).isBetween(200, 201);
        }
    }

    @Test
    void nothingPersonalIsLeftInAnyTableAndEverythingStillVerifies() throws SQLException {
        long damaged = evidence.all().damaged();
        assertThat(tablesWith(vin)).contains("case_file", "claim_desk", "trail_entry");
        assertThat(tablesWith(SECRET)).contains("case_file", "evidence", "claim_step", "claim_objection");
        settle();
        Erased erased = erasures.erase(admin, number, ErasurePart.CASE, "asked for by the owner");
        assertThat(erased.originals()).isOne();
        assertThat(tablesWith(vin)).isEmpty();
        assertThat(tablesWith(SECRET)).isEmpty();
        assertThat(tablesWith("Ms Roe")).isEmpty();

        assertThat(trail.verify().holds()).isTrue();
        assertThat(trail.of(number.value()))
                .last()
                .satisfies(entry -> assertThat(entry.act()).isEqualTo(Trail.ERASED))
                .satisfies(entry -> assertThat(entry.details()).containsEntry("reason", "asked for by the owner"));
        assertThat(evidence.all().damaged()).isEqualTo(damaged);

        Client clerk = server.as(Role.CLERK);
        Answer shown = clerk.get("/api/v1/cases/" + number);
        assertThat(shown.status()).isEqualTo(200);
        assertThat(shown.json().at("/vin").stringValue()).startsWith(Pseudonyms.PREFIX);
        assertThat(shown.json().at("/claim/state").stringValue()).isEqualTo("settled");
        assertThat(shown.json().at("/evidence/0/sha256").stringValue())
                .isEqualTo(Sha256.of(file).hex());
        String digest = Sha256.of(DECLINED.getBytes(StandardCharsets.UTF_8)).hex();
        assertThat(db.sql("select reason from claim_step s join claim c on c.id = s.claim_id join case_file f"
                                + " on f.id = c.case_id where f.number = ? and s.action = 'decline'")
                        .param(number.value())
                        .query(String.class)
                        .single())
                .endsWith(digest);
        String item = shown.json().at("/evidence/0/id").stringValue();
        assertThat(clerk.get("/api/v1/evidence/" + item + "/content").status()).isEqualTo(410);
        assertThat(clerk.get("/api/v1/cases/" + number + "/report.pdf").status())
                .isEqualTo(200);
        assertThat(clerk.get("/api/v1/cases/" + number + "/bag.zip").status()).isEqualTo(200);
        assertThat(server.browser(server.user(Role.CLERK))
                        .get("/cases/" + number)
                        .status())
                .isEqualTo(200);
    }

    /** The file of a backup holds the encrypted bytes, but not the key: that is deleted here and was never in the file. */
    @Test
    void theBytesOfABackupCannotBeReadWithoutTheErasedKey() throws SQLException {
        byte[] stored;
        String sha256 = Sha256.of(file).hex();
        try (Connection owner = TestDatabase.shared().connectAsOwner("postgres");
                Statement statement = owner.createStatement();
                ResultSet row = statement.executeQuery(
                        "select data from raw_chunk where encrypted and sha256 = '" + sha256 + "'")) {
            assertThat(row.next()).isTrue();
            stored = row.getBytes(1);
        }
        assertThat(new String(stored, StandardCharsets.ISO_8859_1)).doesNotContain("Ms Roe", "battery-test");
        settle();
        erasures.erase(admin, number, ErasurePart.ORIGINALS, "the period has ended");
        assertThat(db.sql("select count(*) from original_key where sha256 = ?")
                        .param(sha256)
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(db.sql("select count(*) from raw_chunk where sha256 = ?")
                        .param(sha256)
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    @Test
    void bytesThatAnotherCaseNeedsStayUntilItIsErasedToo() {
        Client other = server.as(server.newUser(Role.WORKSHOP));
        CaseNumber second = open(other, Pairs.serial());
        String item = send(other, second);
        settle();
        assertThat(erasures.erase(admin, number, ErasurePart.ORIGINALS, "first").originals())
                .isZero();
        assertThat(other.get("/api/v1/evidence/" + item + "/content").body()).isEqualTo(file);
        assertThat(erasures.erase(admin, second, ErasurePart.ORIGINALS, "second")
                        .originals())
                .isOne();
        assertThat(other.get("/api/v1/evidence/" + item + "/content").status()).isEqualTo(410);
        CaseNumber third = open(other, Pairs.serial());
        String again = send(other, third);
        assertThat(other.get("/api/v1/evidence/" + again + "/content").body()).isEqualTo(file);
    }

    @Test
    void aHoldOrAClaimInProgressPreventsIt() {
        assertThatThrownBy(() -> erasures.erase(admin, number, ErasurePart.CASE, "too early"))
                .isInstanceOf(RequestException.class)
                .hasMessageContaining("has not ended");
        settle();
        erasures.hold(admin, number, "a court asked for the case");
        assertThatThrownBy(() -> erasures.erase(admin, number, ErasurePart.CASE, "too early"))
                .isInstanceOf(RequestException.class)
                .hasMessageContaining("legal hold");
        assertThat(erasures.holds(admin)).anyMatch(hold -> hold.number().equals(number.value()));
        erasures.release(admin, number, "the court has decided");
        erasures.erase(admin, number, ErasurePart.CASE, "the period has ended");
        assertThatThrownBy(() -> erasures.erase(admin, number, ErasurePart.CASE, "again"))
                .hasMessageContaining("erased already");
        assertThat(workshop.upload("/api/v1/cases/" + number + "/evidence", "b.json", file, null)
                        .json()
                        .get("type")
                        .stringValue())
                .endsWith("#case-erased");
        assertThat(trail.of(number.value()))
                .extracting(entry -> entry.act())
                .contains("legal-hold-placed", "legal-hold-released");
    }

    @Test
    void aCaseIsDueAfterItsPeriodAndNotBefore() {
        settle();
        assertThat(numbersDue(java.time.Instant.now().plusSeconds(60))).contains(number.value());
        assertThat(numbersDue(java.time.Instant.now().minusSeconds(3600))).doesNotContain(number.value());
    }

    @Test
    void anExportHoldsEveryCaseOfTheVehicleWithItsFiles() throws java.io.IOException {
        CaseNumber second = open(server.as(server.newUser(Role.WORKSHOP)), Pairs.serial());
        Answer export = server.browser(server.user(Role.ADMIN))
                .postForm("/privacy/export", java.util.Map.of("vin", vin, "reason", "asked for by the owner"));
        assertThat(export.status()).isEqualTo(200);
        List<String> names = new ArrayList<>();
        String json = null;
        try (java.util.zip.ZipInputStream zip =
                new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(export.body()))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                names.add(entry.getName());
                if (entry.getName().equals("vehicle.json")) {
                    json = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                }
            }
        }
        assertThat(names)
                .containsExactlyInAnyOrder(
                        "vehicle.json", "voltdocket-" + number + ".zip", "voltdocket-" + second + ".zip");
        assertThat(json).contains(vin, number.value(), second.value());
        assertThat(trail.of(second.value())).extracting(entry -> entry.act()).contains("vehicle-exported");
    }

    /** The server may not erase by itself what the functions do not erase. */
    @Test
    void theSettingOfTheErasureGivesTheServerNoRight() {
        assertThatThrownBy(() -> db.sql(
                                "with x as (select set_config('voltdocket.erasing', 'yes', true)) update trail_entry set details = '{}' from x")
                        .update())
                .hasStackTraceContaining("permission denied");
    }

    private List<String> numbersDue(java.time.Instant before) {
        return store.due(ErasurePart.CASE, before, 100_000).stream()
                .map(DueCase::number)
                .toList();
    }

    private void settle() {
        Answer settled = server.as(server.newUser(Role.CLERK))
                .postJson("/api/v1/cases/" + number + "/claim/settle", "{\"reason\":\"done\"}");
        assertThat(settled.status()).as(settled.toString()).isEqualTo(200);
    }

    private CaseNumber open(Client client, String serial) {
        Answer opened = client.postJson(
                "/api/v1/cases",
                "{\"batterySerial\":\"" + serial + "\",\"vin\":\"" + vin + "\",\"complaint\":\"" + SECRET + "\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return CaseNumber.parse(opened.json().get("number").stringValue());
    }

    private String send(Client client, CaseNumber to) {
        Answer sent = client.upload("/api/v1/cases/" + to + "/evidence", "of Ms Roe.json", file, SECRET);
        assertThat(sent.status()).as(sent.toString()).isEqualTo(201);
        return sent.json().get("id").stringValue();
    }

    /** Every table with a row that contains the text in any column, bytes included. */
    private static List<String> tablesWith(String text) throws SQLException {
        List<String> found = new ArrayList<>();
        try (Connection owner = TestDatabase.shared().connectAsOwner("postgres");
                Statement statement = owner.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery(
                    "select relname from pg_class where relkind = 'r' and relnamespace = 'public'::regnamespace")) {
                while (rows.next()) {
                    tables.add(rows.getString(1));
                }
            }
            String hex = java.util.HexFormat.of().formatHex(text.getBytes(StandardCharsets.UTF_8));
            for (String table : tables) {
                try (ResultSet rows = statement.executeQuery("select exists (select from " + table
                        + " t where strpos(t::text, '" + text + "') > 0 or strpos(t::text, '" + hex + "') > 0)")) {
                    rows.next();
                    if (rows.getBoolean(1)) {
                        found.add(table);
                    }
                }
            }
        }
        return found;
    }
}
