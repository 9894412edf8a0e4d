package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.evidence.storage.EvidenceCheck;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.kernel.Vin;
import org.voltdocket.server.command.VerifyEvidence;
import org.voltdocket.server.command.VerifyTrail;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailHead;

/**
 * A copy of the files of a running server, restored into an empty one: there every original, every block and the trail are
 * as they were. What other tests damaged on purpose is damaged there too, and nothing else is. The other way that the
 * manual names is in {@link DumpTest}.
 */
@ServerTest
class BackupTest {

    @TempDir
    private Path folder;

    @Autowired
    private Server server;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private EvidenceUploadService uploads;

    @Autowired
    private EvidenceCheck check;

    @Autowired
    private Trail trail;

    private Sha256 kept;
    private TrailHead head;
    private EvidenceCheck.Found before;

    private record Outcome(int code, String text) {}

    @BeforeEach
    void upload() {
        Actor actor = server.user(Role.WORKSHOP).actor();
        NewCase pair = new NewCase(new BatterySerial(Pairs.serial()), Vin.parse(Pairs.vin()), Facts.UNKNOWN);
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm\n");
        for (int i = 0; i < 3000; i++) {
            csv.append(i).append(i < 120 ? ",12.61,0\n" : ",14.2" + i % 7 + ",850\n");
        }
        Upload file = new Upload(
                "drive.csv",
                new ByteArrayInputStream(csv.toString().getBytes(StandardCharsets.UTF_8)),
                pair.serial().value(),
                Origin.WORKSHOP);
        kept = ((Stored) uploads.receive(actor, caseEdits.open(actor, pair).ref(), file))
                .item()
                .sha256();
        head = trail.head().orElseThrow();
        before = check.all();
    }

    @Test
    void aCopyOfTheFilesOfARunningServerRestoresIntoAnEmptyOne() throws Exception {
        Path data;
        try (Connection connection = connect("postgres")) {
            data = Path.of(text(connection, "show data_directory"));
        }
        Assumptions.assumeTrue(
                Files.isReadable(data.resolve("PG_VERSION")),
                "the database runs in a container, with files of its own");
        Path copy = Files.createDirectories(folder.resolve("restored").resolve("database"));
        try (Connection connection = connect("postgres");
                Statement statement = connection.createStatement()) {
            statement.execute("select pg_backup_start('test', true)");
            copy(data, copy);
            try (ResultSet end = statement.executeQuery("select labelfile from pg_backup_stop(false)")) {
                end.next();
                Files.writeString(copy.resolve("backup_label"), end.getString(1));
            }
        }
        copy(data.resolve("pg_wal"), copy.resolve("pg_wal")); // what was written meanwhile
        try (OwnDatabase restored = new OwnDatabase(folder.resolve("restored"))) {
            assertRestored(restored.url(), "postgres", "");
            damageIsNamed(restored.url(), "postgres", "");
        }
    }

    private void assertRestored(String url, String user, String password) {
        Outcome evidence = evidence(url, user, password);
        assertThat(evidence.code()).as(evidence.text()).isEqualTo(before.sound() ? 0 : 1);
        assertThat(evidence.text())
                .contains(before.files() + " originals of " + before.bytes() + " bytes and " + before.blocks()
                        + " blocks");
        before.faults().forEach(fault -> assertThat(evidence.text()).contains(fault));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = VerifyTrail.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                arguments(VerifyTrail.OPTION, url, user, password, "--head=" + head));
        assertThat(code).as(out.toString(StandardCharsets.UTF_8)).isZero();
    }

    /** The command would not say that all is well whatever it reads. */
    private void damageIsNamed(String url, String user, String password) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, user, password);
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            assertThat(statement.executeUpdate(
                            "update raw_chunk set data = set_byte(data, 40, get_byte(data, 40) # 1) where sha256 = '"
                                    + kept.hex() + "'"))
                    .isOne();
            assertThat(statement.executeUpdate(
                            "delete from recording_block b using evidence e where e.id = b.evidence_id and e.sha256 = '"
                                    + kept.hex() + "' and channel = 'time'"))
                    .isOne();
        }
        Outcome outcome = evidence(url, user, password);
        assertThat(outcome.code()).isEqualTo(1);
        assertThat(outcome.text())
                .contains(kept.hex())
                .contains("has 2 of 3 blocks")
                .contains("DAMAGED: " + (before.damaged() + 2) + " places");
    }

    private static Outcome evidence(String url, String user, String password) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = VerifyEvidence.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                arguments(VerifyEvidence.OPTION, url, user, password));
        return new Outcome(code, out.toString(StandardCharsets.UTF_8));
    }

    private static String[] arguments(String option, String url, String user, String password, String... more) {
        List<String> all = new ArrayList<>(List.of(
                option,
                "--spring.datasource.url=" + url,
                "--spring.datasource.username=" + user,
                "--spring.datasource.password=" + password,
                "--voltdocket.privacy.master-key=" + Server.MASTER_KEY));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    /** Copies a folder that is written to meanwhile; the log of the database mends what is torn. */
    private static void copy(Path from, Path to) throws IOException {
        List<Path> all;
        try (Stream<Path> walk = Files.walk(from)) {
            all = walk.toList();
        }
        for (Path one : all) {
            Path target = to.resolve(from.relativize(one).toString());
            try {
                if (Files.isDirectory(one)) {
                    Files.createDirectories(target);
                } else if (!one.getFileName().toString().startsWith("postmaster.")) {
                    Files.copy(one, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
                }
            } catch (NoSuchFileException gone) {
                // a table that was dropped meanwhile
            }
        }
        to.toFile().setReadable(false, false);
        to.toFile().setReadable(true, true);
        to.toFile().setExecutable(false, false);
        to.toFile().setExecutable(true, true);
    }

    private static String text(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static Connection connect(String database) throws SQLException {
        return TestDatabase.shared().connectAsOwner(database);
    }

    private static String url(String database) {
        return TestDatabase.shared().getJdbcUrl().replaceFirst("(//[^/]+/)[^?]+", "$1" + database);
    }
}
