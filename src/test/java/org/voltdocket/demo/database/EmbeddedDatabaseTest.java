package org.voltdocket.demo.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
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
    void aKilledDatabaseIsStartedAgainWithEveryRowThatWasAcknowledged() throws Exception {
        Process host = start("killed");
        await(host, "killed");
        String url = url(data());
        int acknowledged = 0;
        for (int kill = 0; kill < 3; kill++) {
            try (Connection connection = connect(url);
                    Statement statement = connection.createStatement()) {
                statement.execute("create table if not exists kept (n int primary key)");
                for (int i = 0; i < 20; i++) {
                    statement.execute("insert into kept values (" + acknowledged++ + ")");
                }
                killDatabase(data());
            }
            assertThat(rowsWhenItRunsAgain(url)).isEqualTo(acknowledged);
        }
        long until = System.nanoTime() + Duration.ofSeconds(40).toNanos();
        while (!Files.readString(log("killed")).contains("runs again") && System.nanoTime() < until) {
            Thread.sleep(100);
        }
        assertThat(Files.readString(log("killed"))).contains("The embedded database has ended", "runs again");
        host.destroy();
        assertThat(host.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(databaseRuns())
                .as("a kind end is no reason to start it again")
                .isFalse();
    }

    @Test
    void aFullDiskIsOverWhenThereIsRoomAgain() throws Exception {
        List<String> onSmallDisk = List.of(
                "unshare",
                "-r",
                "-m",
                "sh",
                "-c",
                "mkdir -p " + data() + " && mount -t tmpfs -o size=400m none " + data() + " && exec \"$@\"",
                "host");
        assumeTrue(mounts(), "this system gives a process no disk of its own");
        Process host = start("full", onSmallDisk);
        await(host, "full");
        Path seen = Path.of("/proc", Long.toString(host.pid()), "root", data().toString());
        String url = url(seen);
        try (Connection connection = connect(url, seen);
                Statement statement = connection.createStatement()) {
            statement.execute("create table kept (n int primary key)");
            statement.execute("insert into kept values (1)");
        }
        Path filler = seen.resolve("filler");
        try (OutputStream out = Files.newOutputStream(filler)) {
            byte[] block = new byte[1 << 12];
            while (true) {
                out.write(block);
            }
        } catch (IOException full) {
            assertThat(full).hasMessageContaining("No space left");
        }
        killDatabase(seen);
        for (int second = 0; second < 8; second++) {
            assertThatThrownBy(() -> connect(url, seen)).isInstanceOf(SQLException.class);
            Thread.sleep(1000);
        }
        Files.delete(filler);
        assertThat(rowsWhenItRunsAgain(url, seen)).isEqualTo(1);
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
        return start(name, List.of());
    }

    private Process start(String name, List<String> around) throws IOException {
        List<String> command = new ArrayList<>(around);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                DatabaseHost.class.getName(),
                data().toString()));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log(name).toFile())
                .start();
        started.add(process);
        return process;
    }

    private static boolean mounts() throws Exception {
        if (!Files.isExecutable(Path.of("/usr/bin/unshare"))) {
            return false;
        }
        Process tried = new ProcessBuilder(
                        "unshare", "-r", "-m", "sh", "-c", "mount -t tmpfs -o size=1m none /mnt && unshare -U true")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return tried.waitFor(10, TimeUnit.SECONDS) && tried.exitValue() == 0;
    }

    private static String url(Path data) throws IOException {
        List<String> pidFile = Files.readAllLines(data.resolve("database").resolve("postmaster.pid"));
        return "jdbc:postgresql://127.0.0.1:" + pidFile.get(3).strip() + "/postgres";
    }

    private Connection connect(String url) throws Exception {
        return connect(url, data());
    }

    private static Connection connect(String url, Path data) throws SQLException, IOException {
        return DriverManager.getConnection(url, "postgres", Files.readString(data.resolve("database-password")));
    }

    private static void killDatabase(Path data) throws IOException {
        String pid = Files.readAllLines(data.resolve("database").resolve("postmaster.pid"))
                .get(0);
        assertThat(ProcessHandle.of(Long.parseLong(pid.strip())).orElseThrow().destroyForcibly())
                .isTrue();
    }

    private long rowsWhenItRunsAgain(String url) throws Exception {
        return rowsWhenItRunsAgain(url, data());
    }

    private static long rowsWhenItRunsAgain(String url, Path data) throws Exception {
        long until = System.nanoTime() + Duration.ofSeconds(90).toNanos();
        while (true) {
            try (Connection connection = connect(url, data);
                    Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery("select count(*) from kept")) {
                rows.next();
                return rows.getLong(1);
            } catch (SQLException notYet) {
                assertThat(System.nanoTime()).as(notYet.toString()).isLessThan(until);
                Thread.sleep(100);
            }
        }
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
