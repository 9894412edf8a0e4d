package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
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
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import tools.jackson.databind.JsonNode;

/**
 * Real processes are killed and starved while they work: nothing that was acknowledged is lost, nothing is half-written,
 * and the answer says what to do.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FaultsTest {

    /**
     * Patience of the node under test, so that an outage of seconds is to it what one of a minute is to others: 1 s for a
     * connection ({@link Node}) instead of 5, and 2 s without a sign of life until its work is for others instead of 20.
     */
    private static final List<String> IMPATIENT =
            List.of("--db-scheduler.heartbeat-interval=500ms", "--db-scheduler.polling-interval=500ms");

    /** Free space below which uploads are refused, as {@link Node} sets it. */
    private static final int RESERVE = 2 << 20;

    private static final Duration OUTAGE = Duration.ofSeconds(5);

    private OwnDatabase database;
    private Node node;
    private People people;
    private Client admin;
    private Client workshop;
    private Client clerk;

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        database = new OwnDatabase(folder.resolve("pg"));
        node = new Node(database, folder.resolve("node"), IMPATIENT, Map.of());
        people = new People(node);
        admin = people.admin(node);
        workshop = people.workshop(node);
        clerk = people.clerk(node);
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
        String number = people.open(node);
        Path filler = fill();
        assertRefused(number, "less free space than its reserve");
        assertThat(node.management().get("/actuator/health/readiness").text()).contains("LIMITED");
        Files.delete(filler);
        // above the reserve, but the disk becomes full while the file arrives
        Files.write(filler, new byte[(int) node.uploads().toFile().getUsableSpace() - RESERVE - (1 << 16)]);
        assertRefused(number, "A disk of the server is full");
        Files.delete(filler);
        assertThat(node.management().get("/actuator/health/readiness").text()).contains("UP");
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .isEmpty();
        assertThat(workshop.upload(People.evidence(number), "drive.csv", recording(40_000, 0), null)
                        .status())
                .isEqualTo(201);
    }

    private Path fill() throws IOException {
        Path filler = node.uploads().resolve("filler");
        try (OutputStream out = Files.newOutputStream(filler)) {
            byte[] block = new byte[1 << 16];
            while (true) {
                out.write(block);
            }
        } catch (IOException full) {
            assertThat(full).hasMessageContaining("No space left");
        }
        return filler;
    }

    private void assertRefused(String number, String why) {
        Answer refused = workshop.upload(People.evidence(number), "drive.csv", recording(200_000, 0), null);
        assertThat(refused.status()).as(refused.toString()).isEqualTo(507);
        assertThat(refused.json().get("type").stringValue()).endsWith("#disk-full");
        assertThat(refused.json().get("detail").stringValue()).contains(why);
        assertThat(refused.header("retry-after")).isPresent();
        assertThat(workshop.get("/api/v1/cases/" + number).status())
                .as("reading goes on")
                .isEqualTo(200);
    }

    @Test
    @Order(2)
    void aDatabaseThatIsKilledAndGoneForSecondsLosesNothingAcknowledged() throws Exception {
        String number = people.open(node);
        Map<String, byte[]> acknowledged = new ConcurrentHashMap<>();
        List<Answer> refused = new ArrayList<>();
        AtomicBoolean enough = new AtomicBoolean();
        Thread uploads = new Thread(() -> {
            while (!enough.get()) {
                byte[] file = People.battery();
                Answer answer = workshop.upload(People.evidence(number), "b.json", file, null);
                if (answer.status() == 201) {
                    acknowledged.put(answer.json().get("id").stringValue(), file);
                } else {
                    refused.add(answer);
                }
            }
        });
        uploads.start();
        People.await(() -> acknowledged.size() >= 3);
        database.kill();
        People.await(() -> refused.size() >= 2);
        Answer away = refused.get(refused.size() - 1);
        assertThat(away.status()).as(away.toString()).isEqualTo(503);
        assertThat(away.json().get("type").stringValue()).endsWith("#database-away");
        assertThat(away.header("retry-after")).contains("30");
        assertThat(node.management().get("/actuator/health/liveness").status()).isEqualTo(200);
        assertThat(node.management().get("/actuator/health/readiness").status()).isEqualTo(503);
        Answer page = node.client().header("Accept", "text/html").get("/rulebook");
        assertThat(page.status()).isEqualTo(503);
        assertThat(page.text()).contains("cannot reach its database").doesNotContain("??");

        database.start();
        int before = acknowledged.size();
        People.await(() -> acknowledged.size() >= before + 2);
        enough.set(true);
        uploads.join();
        People.await(() -> node.management().get("/actuator/health/readiness").status() == 200);
        assertThat(refused).allSatisfy(answer -> assertThat(answer.status()).isEqualTo(503));
        assertKept(number, acknowledged);
    }

    @Test
    @Order(3)
    void aServerKilledDuringUploadsDecisionsAndARunGoesOnWhereItWas() throws Exception {
        List<String> claims = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            claims.add(people.claimed(node));
        }
        String number = people.open(node);
        String edition = EditionTexts.name();
        Map<String, byte[]> uploaded = new ConcurrentHashMap<>();
        Map<String, Boolean> decided = new ConcurrentHashMap<>();
        Thread uploads = quietly(() -> {
            byte[] file = People.battery();
            Answer answer = workshop.upload(People.evidence(number), "b.json", file, null);
            if (answer.status() == 201) {
                uploaded.put(answer.json().get("id").stringValue(), file);
            }
            return true;
        });
        List<String> waiting = new ArrayList<>(claims);
        Thread decisions = quietly(() -> {
            String one = waiting.remove(0);
            Answer answer = people.decline(node, one);
            if (answer.status() == 200) {
                decided.put(one, true);
            }
            return !waiting.isEmpty();
        });
        String run;
        JsonNode midway;
        try (Connection ours = database.connect()) {
            hold(ours, people.open(node)); // so that the run cannot be over before the server is killed
            run = people.startRun(node, edition);
            People.await(() -> uploaded.size() >= 2
                    && decided.size() >= 2
                    && people.run(node, run).get("casesRead").intValue() >= 2);
            midway = people.run(node, run);
            node.kill();
        }
        uploads.join();
        decisions.join();
        assertThat(midway.get("state").stringValue()).as(midway.toString()).isEqualTo("running");

        node.start();
        People.await(() -> "done".equals(people.run(node, run).get("state").stringValue()));
        JsonNode done = people.run(node, run);
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue());
        assertThat(done.get("failedTotal").intValue()).isZero();
        assertNoCaseTwiceAndNoneLeftOut(edition);
        assertKept(number, uploaded);
        assertDecisionsAreWhole(decided);
        assertThat(count("select count(*) from pending_assessment")).isZero();
    }

    @Test
    @Order(4)
    void aDatabaseKilledInARunAndAwayForLongLeavesNoCaseOutAndJudgesNoneTwice() throws Exception {
        String edition = EditionTexts.name();
        String run;
        try (Connection ours = database.connect()) {
            hold(ours, people.open(node));
            run = people.startRun(node, edition);
            People.await(() -> people.run(node, run).get("casesRead").intValue() >= 2);
            database.kill(); // while the case that is held is being judged, and can be judged by nobody yet
        }
        People.await(() -> workshop.get("/api/v1/cases").status() == 503);
        Thread.sleep(OUTAGE.toMillis());
        assertThat(workshop.get("/api/v1/cases").status()).isEqualTo(503);
        assertThat(node.management().get("/actuator/health/liveness").status()).isEqualTo(200);
        database.start();
        People.await(() -> {
            Answer answer = admin.get("/api/v1/reassessments/" + run);
            return answer.status() == 200
                    && "done".equals(answer.json().get("state").stringValue());
        });
        JsonNode done = people.run(node, run);
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue());
        assertThat(done.get("failedTotal").intValue()).isZero();
        assertNoCaseTwiceAndNoneLeftOut(edition);
    }

    @Test
    @Order(5)
    void aDatabaseKilledInTheTransactionThatDecidesLeavesNoDecisionLetterOrTrailEntry() throws Exception {
        String number = people.claimed(node);
        long entries;
        CompletableFuture<Answer> decision;
        try (Connection ours = database.connect();
                Statement statement = ours.createStatement()) {
            ours.setAutoCommit(false);
            statement.execute(
                    "lock table claim_document in share mode"); // stops it where the letter is kept, printed already
            decision = CompletableFuture.supplyAsync(() -> people.decline(node, number));
            People.await(
                    () -> count("select count(*) from pg_stat_activity where wait_event_type = 'Lock' and query like"
                                    + " '%claim_document%'")
                            > 0);
            entries = count("select count(*) from trail_entry");
            database.kill();
        }
        Answer away = decision.get();
        assertThat(away.status()).as(away.toString()).isEqualTo(503);
        assertThat(away.json().get("type").stringValue()).endsWith("#database-away");
        assertThat(away.json().get("detail").stringValue()).contains("Send it again");
        database.start();
        People.await(() -> node.management().get("/actuator/health/readiness").status() == 200);
        assertThat(clerk.get("/api/v1/cases/" + number)
                        .json()
                        .at("/claim/state")
                        .stringValue())
                .isEqualTo("in-review");
        assertThat(clerk.get("/api/v1/cases/" + number + "/claims/1/letter.pdf").status())
                .isEqualTo(404);
        assertThat(count("select count(*) from trail_entry")).isEqualTo(entries);
        assertDecisionsAreWhole(Map.of());
        assertThat(people.decline(node, number).status()).isEqualTo(200);
        assertThat(clerk.get("/api/v1/cases/" + number + "/claims/1/letter.pdf").status())
                .isEqualTo(200);
        assertDecisionsAreWhole(Map.of(number, true));
    }

    @Test
    @Order(6)
    void everyUploadAcknowledgedThroughKillsAndAFullDiskIsIntact() throws Exception {
        Map<String, byte[]> acknowledged = new ConcurrentHashMap<>();
        AtomicBoolean enough = new AtomicBoolean();
        List<Thread> senders = new ArrayList<>();
        List<String> numbers = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            String number = people.open(node);
            numbers.add(number);
            Thread sender = new Thread(() -> {
                while (!enough.get()) {
                    try {
                        byte[] file = People.battery();
                        Answer answer = workshop.upload(People.evidence(number), "b.json", file, null);
                        if (answer.status() == 201) {
                            acknowledged.put(answer.json().get("id").stringValue(), file);
                        }
                    } catch (UncheckedIOException serverIsGone) {
                        // sent again when it is back
                    }
                }
            });
            sender.start();
            senders.add(sender);
        }
        for (int kill = 0; kill < 5; kill++) {
            int before = acknowledged.size();
            People.await(() -> acknowledged.size() >= before + 30);
            if (kill % 2 == 0) {
                database.kill();
                Thread.sleep(500);
                database.start();
            } else {
                node.kill();
                node.start();
            }
            if (kill == 2 && node.hasSmallDisk()) {
                Path filler = fill();
                Thread.sleep(1000);
                Files.delete(filler);
            }
        }
        int before = acknowledged.size();
        People.await(() -> acknowledged.size() >= before + 30);
        enough.set(true);
        for (Thread sender : senders) {
            sender.join();
        }
        People.await(() -> count("select count(*) from pending_assessment where failed_at is null") == 0);
        acknowledged.forEach((id, bytes) -> assertThat(
                        workshop.get("/api/v1/evidence/" + id + "/content").body())
                .isEqualTo(bytes));
        assertThat(count("select count(*) from evidence e join case_file f on f.id = e.case_id where f.number in ('"
                        + String.join("','", numbers) + "')"))
                .isGreaterThanOrEqualTo(acknowledged.size());
    }

    /** Nobody can judge this case until the connection ends. */
    private void hold(Connection ours, String number) throws SQLException {
        try (PreparedStatement statement =
                ours.prepareStatement("select pg_advisory_lock(hashtextextended('assessment ' || id,"
                        + " 0)) from case_file where number = ?")) {
            statement.setString(1, number);
            assertThat(statement.executeQuery().next()).isTrue();
        }
    }

    private void assertNoCaseTwiceAndNoneLeftOut(String edition) {
        assertThat(count("""
                select count(*) from (
                    select one, count(a.id) as times
                    from edition e join reassessment r on r.sha256 = e.sha256 and e.name = '%1$s'
                    join reassessment_chunk c on c.reassessment_id = r.id
                    cross join unnest(c.case_ids) as one
                    left join assessment a on a.case_id = one and a.edition = '%1$s' group by one) as judged
                where times <> 1""".formatted(edition)))
                .as("cases judged twice or left out")
                .isZero();
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

    /** A claim is declined with its step, its decision, its letter and its entry in the trail, or none of it happened. */
    private void assertDecisionsAreWhole(Map<String, Boolean> decided) {
        decided.keySet()
                .forEach(one -> assertThat(clerk.get("/api/v1/cases/" + one)
                                .json()
                                .at("/claim/state")
                                .stringValue())
                        .isEqualTo("declined"));
        assertThat(count("""
                select count(*) from claim c
                left join claim_step s on s.claim_id = c.id and s.action = 'decline'
                left join claim_decision d on d.claim_id = c.id
                left join claim_document p on p.claim_id = c.id and p.kind = 'letter'
                join case_file f on f.id = c.case_id
                where num_nonnulls(s.claim_id, d.claim_id, p.claim_id) not in (0, 3)
                    or (c.state = 'declined') <> (d.claim_id is not null) or f.claim_state <> c.state""")).isZero();
        assertThat(count("select count(*) from trail_entry where act = 'claim-decline'"))
                .isEqualTo(count("select count(*) from claim_decision"));
    }

    private long count(String sql) {
        return database.number(sql);
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

    private static byte[] recording(int rows, int from) {
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int i = from; i < from + rows; i++) {
            csv.append(i).append(i < 120 ? ",12.61,0\n" : ",14.20,850\n");
        }
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }
}
