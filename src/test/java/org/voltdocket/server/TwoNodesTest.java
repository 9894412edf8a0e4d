package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
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
import org.voltdocket.support.Installed;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import tools.jackson.databind.JsonNode;

/** Several servers on one database: they share a run, one dies in it, one has its clock set back, and people sign in. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TwoNodesTest {

    private static final int CASES = 24;

    private OwnDatabase database;
    private Path folder;
    private Node first;
    private Node second;
    private People people;
    private final List<String> archive = new ArrayList<>();

    @BeforeAll
    void start(@TempDir Path folder) throws Exception {
        this.folder = folder;
        database = new OwnDatabase(folder.resolve("pg"));
        first = node("first", Map.of());
        second = node("second", Map.of());
        people = new People(first);
        for (int i = 0; i < CASES; i++) {
            Node node = i % 2 == 0 ? first : second;
            archive.add(people.open(node));
            assertThat(people.workshop(node)
                            .upload(People.evidence(archive.get(i)), "b.json", People.battery(), null)
                            .status())
                    .isEqualTo(201);
        }
    }

    private Node node(String name, Map<String, String> environment) throws Exception {
        return new Node(
                database,
                folder.resolve(name),
                List.of(
                        "--db-scheduler.scheduler-name=" + name,
                        "--db-scheduler.heartbeat-interval=500ms",
                        "--db-scheduler.polling-interval=500ms",
                        "--voltdocket.reassessment.workers=4",
                        "--spring.datasource.hikari.data-source-properties.ApplicationName=" + name),
                environment);
    }

    @AfterAll
    void end() throws Exception {
        for (AutoCloseable one : new AutoCloseable[] {first, second, database}) {
            if (one != null) {
                one.close();
            }
        }
    }

    @Test
    @Order(1)
    void aTokenAndASignInHoldOnEveryNode() {
        Client here = People.pages(first, "desk");
        assertThat(here.get("/cases").status()).isEqualTo(200);
        assertThat(here.at(second.client()).get("/cases").status()).isEqualTo(200);
        Answer api = people.clerk(second).get("/api/v1/cases/" + archive.get(0));
        assertThat(api.status()).isEqualTo(200);
        assertThat(api.json())
                .isEqualTo(people.clerk(first)
                        .get("/api/v1/cases/" + archive.get(0))
                        .json());
    }

    @Test
    @Order(2)
    void twoNodesShareARunAndOneIsKilledInTheMiddleOfACase() throws Exception {
        String edition = EditionTexts.name();
        String run;
        try (Connection ours = database.connect()) {
            for (String number : archive.subList(2, 10)) {
                hold(ours, number);
            }
            run = people.startRun(first, edition);
            for (String name : List.of("first", "second")) {
                People.await(() -> database.number("select count(*) from pg_stat_activity where application_name = '"
                                + name + "' and wait_event = 'advisory'")
                        > 0);
            }
            second.kill();
        }
        JsonNode done = ended(first, run);
        assertWhole(done, edition);
        assertThat(database.number("select count(*) from trail_entry where act = 'reassessment-done' and subject ="
                        + " 'reassessment/" + run + "'"))
                .isEqualTo(1);
        second.start();
        assertThat(people.run(second, run)).isEqualTo(people.run(first, run));
    }

    @Test
    @Order(3)
    void aNodeWhoseClockWasSetBackADayLosesNothing() throws Exception {
        Optional<Path> library = faketime();
        Installed.require(library.isPresent(), "no libfaketime on this machine (Debian: apt-get install faketime)");
        String handedIn = people.claimed(first);
        long due = due(handedIn);
        second.close();
        second = node(
                "second",
                Map.of(
                        "LD_PRELOAD",
                        library.get().toString(),
                        "FAKETIME",
                        "-1d",
                        "FAKETIME_DONT_FAKE_MONOTONIC",
                        "1",
                        "FAKETIME_FORCE_MONOTONIC_FIX",
                        "0"));
        tokensAndSessionsHold();
        claimsHold(handedIn, due);
        // to the first node every sign of life of the second is a day old, so it takes its shares for a dead one's
        String edition = EditionTexts.name();
        String run = people.startRun(second, edition);
        assertWhole(ended(first, run), edition);
        assertThat(database.number("select count(*) from pending_assessment")).isZero();
        Node.Said trail = Node.command(database, List.of(), Map.of(), "--verify-trail");
        assertThat(trail.code()).as(trail.text()).isZero();
    }

    private void tokensAndSessionsHold() {
        assertThat(people.clerk(second).get("/api/v1/cases").status()).isEqualTo(200);
        Answer made = second.client()
                .basic("desk", org.voltdocket.support.Server.PASSWORD)
                .postJson("/api/v1/tokens", "{\"name\":\"yesterday\"}");
        assertThat(made.status()).isEqualTo(201);
        assertThat(made.json().get("expiresAt").stringValue())
                .isLessThan(java.time.Instant.now()
                        .plus(java.time.Duration.ofDays(89).plusHours(1))
                        .toString());
        assertThat(first.client()
                        .header(
                                "Authorization",
                                "Bearer " + made.json().get("token").stringValue())
                        .get("/api/v1/cases")
                        .status())
                .isEqualTo(200);
        assertThat(People.pages(second, "desk").get("/desk").status()).isEqualTo(200);
    }

    /** Handed in today, decided yesterday: each step is kept in its order, and due days are reckoned from the step's own. */
    private void claimsHold(String handedIn, long due) {
        assertThat(due(handedIn)).isEqualTo(due);
        assertThat(people.decline(second, handedIn).status()).isEqualTo(200);
        assertThat(people.clerk(first)
                        .get("/api/v1/cases/" + handedIn)
                        .json()
                        .at("/claim/state")
                        .stringValue())
                .isEqualTo("declined");
        assertThat(people.clerk(first)
                        .get("/api/v1/cases/" + handedIn + "/claims/1/letter.pdf")
                        .status())
                .isEqualTo(200);
        String yesterday = people.claimed(second);
        assertThat(due - due(yesterday)).isBetween(0L, 3L); // a day before, or the Friday before a Monday
        assertThat(people.clerk(first)
                        .get("/api/v1/cases/" + yesterday)
                        .json()
                        .at("/claim/state")
                        .stringValue())
                .isEqualTo("in-review");
        assertThat(people.decline(first, yesterday).status()).isEqualTo(200);
    }

    /** The day until which a claim is to be decided, as a count of days. */
    private long due(String number) {
        return database.number("select d.due_on - date '2026-01-01' from claim_desk d join claim c on c.id = d.claim_id"
                + " join case_file f on f.id = c.case_id where f.number = '" + number + "' and d.due_on is not null");
    }

    private JsonNode ended(Node node, String run) throws InterruptedException {
        People.await(() -> "done".equals(people.run(node, run).get("state").stringValue()));
        return people.run(node, run);
    }

    private void assertWhole(JsonNode done, String edition) {
        assertThat(done.get("casesTotal").intValue()).isGreaterThanOrEqualTo(CASES);
        assertThat(done.get("casesRead").intValue())
                .isEqualTo(done.get("casesTotal").intValue());
        assertThat(done.get("failedTotal").intValue()).isZero();
        assertThat(database.number("""
                select count(*) from case_file f left join (
                    select case_id, count(*) as times from assessment where edition = '%s' group by case_id) as a
                on a.case_id = f.id where coalesce(times, 0) <> 1""".formatted(edition)))
                .as("cases judged twice or left out")
                .isZero();
    }

    /** Nobody can judge this case until the connection ends. */
    private static void hold(Connection ours, String number) throws SQLException {
        try (PreparedStatement statement =
                ours.prepareStatement("select pg_advisory_lock(hashtextextended('assessment ' || id,"
                        + " 0)) from case_file where number = ?")) {
            statement.setString(1, number);
            assertThat(statement.executeQuery().next()).isTrue();
        }
    }

    private static Optional<Path> faketime() throws Exception {
        Path libraries = Path.of("/usr/lib");
        try (Stream<Path> found =
                Files.find(libraries, 3, (file, kind) -> file.endsWith(Path.of("faketime", "libfaketime.so.1")))) {
            return found.findFirst();
        }
    }
}
