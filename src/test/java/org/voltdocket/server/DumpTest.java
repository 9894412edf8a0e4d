package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.server.command.VerifyEvidence;
import org.voltdocket.server.command.VerifyTrail;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Installed;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.PostgresPrograms;

/**
 * A dump of the database of a working server, restored into an empty one: evidence and trail hold there, and a server on it
 * gives the same case, report, letter and originals. By the PostgreSQL that the machine's packages install, whatever its
 * version, so that the schema is shown to work on it too.
 */
class DumpTest {

    private record Outcome(int code, String text) {}

    /** What a server gives of a case to a clerk. */
    private record Shown(String json, byte[] report, byte[] letter, byte[] original) {}

    @Test
    void aDumpOfAWorkingServerGivesTheSameCasesInAnEmptyDatabase(@TempDir Path folder) throws Exception {
        Optional<PostgresPrograms> programs = PostgresPrograms.installed();
        Installed.require(
                programs.isPresent(),
                "no PostgreSQL 16 or newer with server and pg_dump on this machine (.ci/postgresql gets one)");
        PostgresPrograms postgres = programs.get();
        Path dump = folder.resolve("voltdocket.dump");
        try (OwnDatabase database = new OwnDatabase(folder.resolve("first"), postgres);
                OwnDatabase empty = new OwnDatabase(folder.resolve("second"), postgres)) {
            byte[] drive = People.drive(3000);
            String number;
            Shown before;
            People people;
            try (Node node = new Node(database, folder.resolve("node"))) {
                people = new People(node);
                number = people.open(node);
                Client workshop = people.workshop(node);
                for (byte[] file : List.of(drive, People.battery())) {
                    assertThat(workshop.upload(People.evidence(number), "file", file, null)
                                    .status())
                            .isEqualTo(201);
                }
                people.claim(node, number);
                assertThat(people.decline(node, number).status()).isEqualTo(200);
                before = shown(people.clerk(node), number, drive);
                dumpWhileEvidenceComes(postgres, database, dump, people, node);
                // the roles that the dump grants rights to belong to the whole server and are not in it
                for (String role : List.of("voltdocket_staff", "voltdocket_workshop")) {
                    postgres.run("psql", "-X", "-d", empty.uri(), "-c", "create role " + role + " nologin");
                }
                postgres.run("pg_restore", "--exit-on-error", "--no-owner", "-d", empty.uri(), dump.toString());
            }
            assertHolds(empty);
            try (Node node = new Node(empty, folder.resolve("restored"))) {
                Shown after = shown(people.clerk(node), number, drive);
                assertThat(after.json()).isEqualTo(before.json());
                assertThat(after.report()).isEqualTo(before.report());
                assertThat(after.letter()).isEqualTo(before.letter());
                assertThat(after.original()).isEqualTo(drive);
                assertThat(people.workshop(node)
                                .upload(People.evidence(people.open(node)), "file", People.drive(900), null)
                                .status())
                        .isEqualTo(201);
            }
            damageIsNamed(empty, Sha256.of(drive));
        }
    }

    /** The dump is of one moment, whatever is written meanwhile. */
    private static void dumpWhileEvidenceComes(
            PostgresPrograms postgres, OwnDatabase database, Path dump, People people, Node node) throws Exception {
        String number = people.open(node);
        AtomicBoolean enough = new AtomicBoolean();
        List<Integer> answered = new ArrayList<>();
        Thread uploads = new Thread(() -> {
            while (!enough.get()) {
                answered.add(people.workshop(node)
                        .upload(People.evidence(number), "b.json", People.battery(), null)
                        .status());
            }
        });
        uploads.start();
        postgres.run("pg_dump", "-Fc", "-f", dump.toString(), "-d", database.uri());
        enough.set(true);
        uploads.join();
        assertThat(answered).isNotEmpty().containsOnly(201);
    }

    private static Shown shown(Client clerk, String number, byte[] drive) {
        String at = "/api/v1/cases/" + number;
        Answer json = clerk.get(at);
        assertThat(json.status()).as(json.toString()).isEqualTo(200);
        assertThat(json.json().at("/claim/state").stringValue()).isEqualTo("declined");
        String id = json.json()
                .get("evidence")
                .valueStream()
                .filter(item ->
                        item.get("sha256").stringValue().equals(Sha256.of(drive).hex()))
                .map(item -> item.get("id").stringValue())
                .findFirst()
                .orElseThrow();
        return new Shown(
                json.text(),
                whole(clerk.get(at + "/report.pdf")),
                whole(clerk.get(at + "/claims/1/letter.pdf")),
                whole(clerk.get("/api/v1/evidence/" + id + "/content")));
    }

    private static byte[] whole(Answer answer) {
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.body()).isNotEmpty();
        return answer.body();
    }

    private static void assertHolds(OwnDatabase restored) {
        Outcome evidence = evidence(restored);
        assertThat(evidence.code()).as(evidence.text()).isZero();
        assertThat(evidence.text()).contains("The evidence is intact");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = VerifyTrail.run(
                new PrintStream(out, true, StandardCharsets.UTF_8), arguments(VerifyTrail.OPTION, restored));
        assertThat(code).as(out.toString(StandardCharsets.UTF_8)).isZero();
    }

    /** The command would not say that all is well whatever it reads. */
    private static void damageIsNamed(OwnDatabase restored, Sha256 drive) throws Exception {
        try (Connection connection = restored.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            assertThat(statement.executeUpdate(
                            "update raw_chunk set data = set_byte(data, 40, get_byte(data, 40) # 1) where sha256 = '"
                                    + drive.hex() + "'"))
                    .isOne();
        }
        Outcome evidence = evidence(restored);
        assertThat(evidence.code()).as(evidence.text()).isEqualTo(1);
        assertThat(evidence.text()).contains(drive.hex()).contains("DAMAGED: 1 places");
    }

    private static Outcome evidence(OwnDatabase database) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = VerifyEvidence.run(
                new PrintStream(out, true, StandardCharsets.UTF_8), arguments(VerifyEvidence.OPTION, database));
        return new Outcome(code, out.toString(StandardCharsets.UTF_8));
    }

    private static String[] arguments(String option, OwnDatabase database) {
        return new String[] {
            option,
            "--spring.datasource.url=" + database.url(),
            "--spring.datasource.username=postgres",
            "--spring.datasource.password="
        };
    }
}
