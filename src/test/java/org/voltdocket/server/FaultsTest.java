package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.assessment.edition.EditionTexts;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.Server;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Real processes are killed and starved while they work: nothing that was acknowledged is lost, nothing is half-written,
 * and the answer says what to do.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FaultsTest {

    private static final Duration PATIENCE = Duration.ofSeconds(120);

    private OwnDatabase database;
    private Node node;
    private Client admin;
    private Client workshop;
    private Client clerk;
    private int counter;

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        database = new OwnDatabase(folder.resolve("pg"));
        node = new Node(database, folder.resolve("node"));
        people();
    }

    @AfterAll
    void end() throws Exception {
        if (node != null) {
            node.close();
        }
        if (database != null) {
            database.close();
        }
    }

    @Test
    @Order(1)
    void aFullDiskKeepsNothingSaysSoAndIsOverWhenThereIsRoom() throws Exception {
        Assumptions.assumeTrue(node.hasSmallDisk(), "this system gives a process no disk of its own");
        String number = open();
        Path filler = node.uploads().resolve("filler");
        try (OutputStream out = Files.newOutputStream(filler)) {
            byte[] block = new byte[1 << 16];
            while (true) {
                out.write(block);
            }
        } catch (IOException full) {
            assertThat(full).hasMessageContaining("No space left");
        }
        Answer refused = workshop.upload(evidence(number), "drive.csv", recording(40_000, 0), null);
        assertThat(refused.status()).as(refused.toString()).isEqualTo(507);
        assertThat(refused.json().get("type").stringValue()).endsWith("#disk-full");
        assertThat(refused.header("retry-after")).isPresent();
        Files.delete(filler);
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .isEmpty();
        assertThat(workshop.upload(evidence(number), "drive.csv", recording(40_000, 0), null)
                        .status())
                .isEqualTo(201);
    }

    @Test
    @Order(2)
    void aDatabaseThatIsKilledAndGoneForSecondsLosesNothingAcknowledged() throws Exception {
        String number = open();
        Map<String, byte[]> acknowledged = new ConcurrentHashMap<>();
        List<Answer> refused = new ArrayList<>();
        AtomicBoolean enough = new AtomicBoolean();
        Thread uploads = new Thread(() -> {
            while (!enough.get()) {
                byte[] file = battery(++counter);
                Answer answer = workshop.upload(evidence(number), "b.json", file, null);
                if (answer.status() == 201) {
                    acknowledged.put(answer.json().get("id").stringValue(), file);
                } else {
                    refused.add(answer);
                }
            }
        });
        uploads.start();
        await(() -> acknowledged.size() >= 3);
        database.kill();
        await(() -> refused.size() >= 2);
        Answer away = refused.get(refused.size() - 1);
        assertThat(away.status()).as(away.toString()).isEqualTo(503);
        assertThat(away.json().get("type").stringValue()).endsWith("#database-away");
        assertThat(away.header("retry-after")).contains("30");
        assertThat(node.client().get("/actuator/health/liveness").status()).isEqualTo(200);
        assertThat(node.client().get("/actuator/health/readiness").status()).isEqualTo(503);
        Answer page = node.client().header("Accept", "text/html").get("/rulebook");
        assertThat(page.status()).isEqualTo(503);
        assertThat(page.text()).contains("cannot reach its database").doesNotContain("??");

        database.start();
        int before = acknowledged.size();
        await(() -> acknowledged.size() >= before + 2);
        enough.set(true);
        uploads.join();
        assertThat(node.client().get("/actuator/health/readiness").status()).isEqualTo(200);
        assertThat(refused).allSatisfy(answer -> assertThat(answer.status()).isEqualTo(503));
        assertKept(number, acknowledged);
    }

    @Test
    @Order(3)
    void aServerKilledDuringUploadsDecisionsAndARunGoesOnWhereItWas() throws Exception {
        List<String> claims = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            claims.add(claimed());
        }
        String number = open();
        String edition = EditionTexts.name();
        String browserPage = adminPages()
                .upload("/editions", "e.yaml", EditionTexts.bytes(EditionTexts.tilted(edition)), null)
                .header("location")
                .orElseThrow();
        assertThat(browserPage).contains("/editions/");
        String run = admin.postJson("/api/v1/reassessments", "{\"mode\":\"final\",\"rulebook\":\"" + edition + "\"}")
                .json()
                .get("id")
                .stringValue();
        Map<String, byte[]> uploaded = new ConcurrentHashMap<>();
        Map<String, Boolean> decided = new ConcurrentHashMap<>();
        Thread uploads = quietly(() -> {
            byte[] file = battery(++counter);
            Answer answer = workshop.upload(evidence(number), "b.json", file, null);
            if (answer.status() == 201) {
                uploaded.put(answer.json().get("id").stringValue(), file);
            }
            return true;
        });
        List<String> waiting = new ArrayList<>(claims);
        Thread decisions = quietly(() -> {
            String one = waiting.remove(0);
            Answer answer = clerk.postJson(
                    "/api/v1/cases/" + one + "/claim/decline",
                    "{\"reason\":\"The battery passed every test, and the vehicle is the likelier cause here.\"}");
            if (answer.status() == 200) {
                decided.put(one, true);
            }
            return !waiting.isEmpty();
        });
        await(() -> uploaded.size() >= 2
                && decided.size() >= 2
                && read(run).get("casesRead").intValue() >= 2);
        JsonNode midway = read(run);
        node.kill();
        uploads.join();
        decisions.join();
        assertThat(midway.get("state").stringValue()).as(midway.toString()).isEqualTo("running");

        node.start();
        await(() -> "done".equals(read(run).get("state").stringValue()));
        JsonNode done = read(run);
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue());
        assertThat(done.get("failedTotal").intValue()).isZero();
        assertThat(number("""
                select count(*) from (
                    select one, count(a.id) as times from reassessment_chunk c cross join unnest(c.case_ids) as one
                    left join assessment a on a.case_id = one and a.edition = '%s' group by one) as judged
                where times <> 1""".formatted(edition)))
                .as("cases judged twice or left out")
                .isZero();
        assertKept(number, uploaded);
        assertDecisionsAreWhole(decided);
        assertThat(number("select count(*) from assessment_due")).isZero();
    }

    private void assertKept(String number, Map<String, byte[]> acknowledged) {
        acknowledged.forEach((id, bytes) -> assertThat(
                        workshop.get("/api/v1/evidence/" + id + "/content").body())
                .isEqualTo(bytes));
        JsonNode shown = workshop.get("/api/v1/cases/" + number).json();
        assertThat(shown.get("evidence").size()).isGreaterThanOrEqualTo(acknowledged.size());
        assertThat(shown.has("assessmentFailure")).isFalse();
        for (JsonNode item : shown.get("evidence")) {
            Answer content = workshop.get("/api/v1/evidence/" + item.get("id").stringValue() + "/content");
            assertThat(org.voltdocket.kernel.Sha256.of(content.body()).hex())
                    .isEqualTo(item.get("sha256").stringValue());
        }
    }

    /** A claim is declined with its step and its decision, or none of it happened. */
    private void assertDecisionsAreWhole(Map<String, Boolean> decided) throws Exception {
        decided.keySet()
                .forEach(one -> assertThat(clerk.get("/api/v1/cases/" + one)
                                .json()
                                .at("/claim/state")
                                .stringValue())
                        .isEqualTo("declined"));
        assertThat(number("""
                select count(*) from claim c
                left join claim_step s on s.claim_id = c.id and s.action = 'decline'
                left join claim_decision d on d.claim_id = c.id
                join case_file f on f.id = c.case_id
                where num_nonnulls(s.claim_id, d.claim_id) not in (0, 2)
                    or (c.state = 'declined') <> (d.claim_id is not null) or f.claim_state <> c.state""")).isZero();
        assertThat(number("select count(*) from trail_entry where act = 'claim-decline'"))
                .isEqualTo(number("select count(*) from claim_decision"));
    }

    private JsonNode read(String run) {
        return admin.get("/api/v1/reassessments/" + run).json();
    }

    private long number(String sql) throws Exception {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    /** Does it until it says that this is enough, or the server is gone. */
    private static Thread quietly(java.util.function.BooleanSupplier work) {
        Thread thread = new Thread(() -> {
            try {
                while (work.getAsBoolean()) {
                    Thread.onSpinWait();
                }
            } catch (UncheckedIOException gone) {
                Thread.currentThread().interrupt();
            }
        });
        thread.start();
        return thread;
    }

    private static void await(java.util.function.BooleanSupplier reached) throws InterruptedException {
        long until = System.nanoTime() + PATIENCE.toNanos();
        while (!reached.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited in vain").isLessThan(until);
            Thread.sleep(20);
        }
    }

    private void people() {
        admin = node.client().header("Authorization", "Bearer " + token(Node.ADMIN));
        Client pages = adminPages();
        pages.postForm("/accounts/workshops", Map.of("workshop", "Faulty Towers Garage"));
        Matcher id = Pattern.compile("<option value=\"([0-9a-f-]{36})\"")
                .matcher(pages.get("/accounts").text());
        assertThat(id.find()).isTrue();
        account(pages, "shop", "WORKSHOP", id.group(1));
        account(pages, "desk", "CLERK", "");
        workshop = node.client().header("Authorization", "Bearer " + token("shop"));
        clerk = node.client().header("Authorization", "Bearer " + token("desk"));
    }

    private Client adminPages() {
        Client pages = node.client().header("Accept", "text/html");
        pages.postForm("/sign-in", Map.of("username", Node.ADMIN, "password", Server.PASSWORD));
        return pages.header("X-CSRF-TOKEN", pages.csrf());
    }

    private static void account(Client pages, String name, String role, String of) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("name", name);
        fields.put("password", Server.PASSWORD);
        fields.put("role", role);
        fields.put("of", of);
        assertThat(pages.postForm("/accounts", fields).status()).isEqualTo(302);
    }

    private String token(String user) {
        Answer made = node.client().basic(user, Server.PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"faults\"}");
        assertThat(made.status()).as(made.toString()).isEqualTo(201);
        return JsonMapper.shared().readTree(made.text()).get("token").stringValue();
    }

    private String open() {
        Answer answer = workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }

    private String claimed() {
        String number = open();
        String claim = "/api/v1/cases/" + number + "/claim";
        assertThat(workshop.upload(evidence(number), "b.json", battery(++counter), null)
                        .status())
                .isEqualTo(201);
        assertThat(workshop.postJson(claim, "{\"amount\":\"99.00\",\"currency\":\"EUR\"}")
                        .status())
                .isEqualTo(201);
        assertThat(workshop.postJson(claim + "/submit", "{}").status()).isEqualTo(200);
        assertThat(clerk.postJson(claim + "/take", "{}").status()).isEqualTo(200);
        return number;
    }

    private static String evidence(String number) {
        return "/api/v1/cases/" + number + "/evidence";
    }

    private static byte[] battery(int number) {
        return ("{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.71,"
                        + "\"temperatureC\":18,\"note\":\"" + number + "\"}")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] recording(int rows, int from) {
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int i = from; i < from + rows; i++) {
            csv.append(i).append(i < 120 ? ",12.61,0\n" : ",14.20,850\n");
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }
}
