package org.voltdocket.demo.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.server.startup.StartupException;

/** Starts real processes on one data directory, ends them kindly and otherwise, and looks at what is left. */
class EmbeddedDatabaseTest {

    @TempDir
    private Path folder;

    private final List<Process> started = new ArrayList<>();

    @AfterEach
    void endAll() throws Exception {
        for (Process process : started) {
            process.destroy();
            process.waitFor(30, TimeUnit.SECONDS);
        }
        OrphanedPostgres.stop(data().resolve("database"));
    }

    @Test
    void rowsSurviveEveryKindOfEndAndAFolderHasOneServer() throws Exception {
        Process first = start("first");
        assertThat(await(first, "first")).contains("ROWS 1", "FSYNC on", "SYNCHRONOUS_COMMIT on", "scram-sha-256");

        assertThat(ended(start("rival"), "rival"))
                .contains("is in use by another running Voltdocket")
                .doesNotContain("ROWS");
        assertOnlyThePasswordLetsIn();
        assertOwnerOnly();

        first.destroyForcibly().waitFor();
        assertThat(databaseRuns()).as("the orphan goes on").isTrue();
        Process second = start("second");
        assertThat(await(second, "second")).contains("is stopped first", "ROWS 2");

        second.destroy();
        assertThat(second.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(databaseRuns()).as("a kind end takes the database along").isFalse();
        assertThat(await(start("third"), "third")).contains("ROWS 3");
    }

    @Test
    void aPidFileThatPointsNowhereOrToAStrangerIsRemoved() throws IOException {
        Path database = Files.createDirectories(data().resolve("database"));
        Path pidFile = database.resolve("postmaster.pid");
        long stranger = ProcessHandle.current().pid();
        for (String content : new String[] {"999999999\n", "no number\n", "", stranger + "\n"}) {
            Files.writeString(pidFile, content);
            OrphanedPostgres.stop(database);
            assertThat(pidFile).doesNotExist();
        }
        assertThat(ProcessHandle.current().isAlive()).isTrue();
    }

    @Test
    void aFolderIsTakenOnceAndGivenBack() throws IOException {
        DataDirectory taken = DataDirectory.take(data());
        assertThatThrownBy(() -> DataDirectory.take(data()))
                .isInstanceOf(StartupException.class)
                .hasMessageContaining("is in use");
        taken.close();
        DataDirectory.take(data()).close();
    }

    @Test
    void aFolderThatCannotBeIsNamed() throws IOException {
        Path file = Files.createFile(folder.resolve("a-file"));
        assertThatThrownBy(() -> DataDirectory.take(file.resolve("data")))
                .isInstanceOf(StartupException.class)
                .hasMessageContaining("cannot be written");
    }

    @Test
    void whatAnUnfinishedFirstStartLeftIsPutAsideNotDeleted() throws IOException {
        try (DataDirectory data = DataDirectory.take(data())) {
            Files.createDirectories(data.database());
            Files.writeString(data.database().resolve("half"), "written");
            data.putAsideUnfinished();
            assertThat(data.database()).doesNotExist();
            try (var left = Files.list(data.root())) {
                assertThat(left.filter(p -> p.getFileName().toString().startsWith("database-unfinished")))
                        .singleElement()
                        .satisfies(p -> assertThat(p.resolve("half")).hasContent("written"));
            }
        }
    }

    @Test
    void aFolderOfAnOlderBuildIsRefusedAndLeftUntouched() throws IOException {
        try (DataDirectory data = DataDirectory.take(data())) {
            Files.createDirectories(data.database());
            Files.writeString(data.database().resolve("PG_VERSION"), "18");
            data.markFinished();
        }
        DataDirectory.take(data()).close();
        Files.writeString(data().resolve("database-made"), ""); // as older builds wrote it
        Map<Path, FileTime> before = content();
        for (int i = 0; i < 2; i++) { // the lock is released
            assertThatThrownBy(() -> DataDirectory.take(data()))
                    .isInstanceOf(StartupException.class)
                    .hasMessageContaining("was created by an older build of Voltdocket")
                    .hasMessageContaining("left untouched");
        }
        assertThat(content()).isEqualTo(before);
    }

    private Map<Path, FileTime> content() throws IOException {
        Map<Path, FileTime> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(data())) {
            for (Path file : all.toList()) {
                files.put(file, Files.getLastModifiedTime(file));
            }
        }
        return files;
    }

    private Path data() {
        return folder.resolve("data");
    }

    private Process start(String name) throws IOException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        DatabaseHost.class.getName(),
                        data().toString())
                .redirectErrorStream(true)
                .redirectOutput(log(name).toFile())
                .start();
        started.add(process);
        return process;
    }

    private Path log(String name) {
        return folder.resolve(name + ".log");
    }

    private String await(Process process, String name) throws Exception {
        long until = System.nanoTime() + Duration.ofSeconds(90).toNanos();
        while (System.nanoTime() < until) {
            String log = Files.readString(log(name));
            if (log.contains("READY")) {
                return log;
            }
            assertThat(process.isAlive()).as(log).isTrue();
            Thread.sleep(50);
        }
        throw new AssertionError("not ready: " + Files.readString(log(name)));
    }

    private String ended(Process process, String name) throws Exception {
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isNotZero();
        return Files.readString(log(name));
    }

    private boolean databaseRuns() throws IOException {
        Path pidFile = data().resolve("database").resolve("postmaster.pid");
        return Files.exists(pidFile)
                && ProcessHandle.of(Long.parseLong(
                                Files.readAllLines(pidFile).get(0).strip()))
                        .flatMap(process -> process.info().command())
                        .isPresent();
    }

    private void assertOnlyThePasswordLetsIn() throws Exception {
        List<String> pidFile = Files.readAllLines(data().resolve("database").resolve("postmaster.pid"));
        String url = "jdbc:postgresql://127.0.0.1:" + pidFile.get(3).strip() + "/postgres";
        assertThat(pidFile.get(4)).as("no unix socket").isBlank();
        assertThatThrownBy(() -> DriverManager.getConnection(url, "postgres", "a guess"))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("password");
        String password = Files.readString(data().resolve("database-password"));
        try (Connection connection = DriverManager.getConnection(url, "postgres", password)) {
            assertThat(connection.isValid(5)).isTrue();
        }
    }

    private void assertOwnerOnly() throws IOException {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(data())))
                .isEqualTo("rwx------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(data().resolve("database-password"))))
                .isEqualTo("rw-------");
    }
}
