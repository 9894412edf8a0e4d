package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.support.Installed;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.PostgresPrograms;
import org.voltdocket.support.S3Server;

/** The command {@code db/archive} on a real server, with originals in the database and in an object store. */
class ArchiveScriptTest {

    private record Said(int code, String text) {}

    @Test
    void aBackupIsTakenTestedAndRestored(@TempDir Path folder) throws Exception {
        PostgresPrograms postgres = programs();
        Path backups = Files.createDirectories(folder.resolve("backups"));
        try (OwnDatabase database = new OwnDatabase(folder.resolve("pg"), postgres);
                S3Server store = new S3Server(folder.resolve("s3"))) {
            People people;
            try (Node without = new Node(database, folder.resolve("without"))) {
                people = new People(without);
                upload(people, without, people.open(without));
            }
            try (Node node = new Node(database, folder.resolve("node"), store.options(), S3Server.environment())) {
                upload(people, node, people.open(node));
                Said backup = run(postgres, database, store, "backup", backups.toString());
                assertThat(backup.code()).as(backup.text()).isZero();
                assertThat(Files.list(backups.resolve("originals"))).hasSize(1);
                assertThat(database.number("select count(*) from backup_taken where bytes > 0"))
                        .isOne();
            }
            String dump = dump(backups);
            Said tested = run(postgres, database, store, "test", dump);
            assertThat(tested.code()).as(tested.text()).isZero();
            assertThat(tested.text())
                    .contains("The evidence is intact: 2 originals", "The trail holds", "tested and marked");
            assertThat(database.number("select count(*) from restore_tested")).isOne();
            assertThat(database.number("select count(*) from pg_database where datname like 'voltdocket_test%'"))
                    .isZero();
            Files.delete(store.objects().get(0));
            Said restored = run(postgres, database, store, "restore", dump, "restored");
            assertThat(restored.code()).as(restored.text()).isZero();
            assertThat(restored.text()).contains("put back into the store: 1", "restored and verified in");
            assertThat(store.objects()).hasSize(1);
            damagedDumpIsNotMarked(postgres, database, store, Path.of(dump));
        }
    }

    private static void damagedDumpIsNotMarked(
            PostgresPrograms postgres, OwnDatabase database, S3Server store, Path dump) throws Exception {
        byte[] bytes = Files.readAllBytes(dump);
        bytes[bytes.length / 2] ^= 1;
        Files.write(dump, bytes);
        Said refused = run(postgres, database, store, "test", dump.toString());
        assertThat(refused.code()).as(refused.text()).isEqualTo(1);
        assertThat(refused.text()).contains("nothing is marked");
        assertThat(database.number("select count(*) from restore_tested")).isOne();
    }

    private static PostgresPrograms programs() throws Exception {
        Optional<PostgresPrograms> programs = PostgresPrograms.installed();
        Installed.require(
                programs.isPresent(),
                "no PostgreSQL 16 or newer with server and pg_dump on this machine (.ci/postgresql gets one)");
        return programs.get();
    }

    private static void upload(People people, Node node, String number) {
        assertThat(people.workshop(node)
                        .upload(People.evidence(number), "drive.csv", People.drive(900), null)
                        .status())
                .isEqualTo(201);
    }

    private static String dump(Path backups) throws Exception {
        try (Stream<Path> files = Files.list(backups)) {
            return files.filter(file -> file.toString().endsWith(".dump"))
                    .findFirst()
                    .orElseThrow()
                    .toString();
        }
    }

    private static Said run(PostgresPrograms postgres, OwnDatabase database, S3Server store, String... arguments)
            throws Exception {
        List<String> command = new ArrayList<>(List.of("db/archive"));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        Map<String, String> environment = builder.environment();
        environment.put("PATH", postgres.folder() + File.pathSeparator + environment.get("PATH"));
        environment.put("PGHOST", "127.0.0.1");
        environment.put("PGPORT", Integer.toString(database.port()));
        environment.put("PGUSER", "postgres");
        environment.put("PGDATABASE", "postgres");
        environment.put(
                "VOLTDOCKET_COMMAND",
                Path.of(System.getProperty("java.home"), "bin", "java") + " -Xmx256m -XX:TieredStopAtLevel=1 -cp "
                        + Node.programOnly() + " org.voltdocket.Voltdocket " + String.join(" ", store.options()));
        environment.put("VOLTDOCKET_RAW_BUCKET", S3Server.BUCKET);
        environment.putAll(S3Server.environment());
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Said(process.waitFor(), text);
    }
}
