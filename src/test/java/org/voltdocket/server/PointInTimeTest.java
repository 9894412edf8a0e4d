package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Installed;
import org.voltdocket.support.Node;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.People;
import org.voltdocket.support.PostgresPrograms;

/** A copy of the files and the archived log restore the database to a moment between two uploads, as the manual describes. */
class PointInTimeTest {

    @Test
    void theDatabaseComesBackAsItWasAtAMoment(@TempDir Path folder) throws Exception {
        Optional<PostgresPrograms> programs = PostgresPrograms.installed();
        Installed.require(
                programs.isPresent(),
                "no PostgreSQL 16 or newer with server and pg_basebackup on this machine (.ci/postgresql gets one)");
        PostgresPrograms postgres = programs.get();
        Path archive = Files.createDirectories(folder.resolve("archive"));
        Path restored = Files.createDirectories(folder.resolve("second")).resolve("database");
        byte[] before = People.drive(900);
        byte[] after = People.drive(901);
        String moment;
        List<String> archiving = List.of(
                "wal_level=replica",
                "archive_mode=on",
                "archive_command=test ! -f '" + archive + "/%f' && cp '%p' '" + archive + "/%f'");
        try (OwnDatabase first = new OwnDatabase(folder.resolve("first"), postgres, archiving);
                Node node = new Node(first, folder.resolve("node"))) {
            People people = new People(node);
            String number = people.open(node);
            postgres.run("pg_basebackup", "-D", restored.toString(), "-X", "stream", "-c", "fast", "-d", first.uri());
            assertThat(people.workshop(node)
                            .upload(People.evidence(number), "before.csv", before, null)
                            .status())
                    .isEqualTo(201);
            moment = text(first, "select clock_timestamp()::text");
            Thread.sleep(50);
            assertThat(people.workshop(node)
                            .upload(People.evidence(number), "after.csv", after, null)
                            .status())
                    .isEqualTo(201);
            String log = text(first, "select pg_walfile_name(pg_switch_wal())");
            People.await(() -> Files.exists(archive.resolve(log)));
        }
        Files.writeString(restored.resolve("recovery.signal"), "");
        List<String> recovery = List.of(
                "restore_command=cp '" + archive + "/%f' '%p'",
                "recovery_target_time=" + moment,
                "recovery_target_action=promote");
        try (OwnDatabase second = new OwnDatabase(folder.resolve("second"), postgres, recovery)) {
            People.await(() -> second.number("select case when pg_is_in_recovery() then 1 else 0 end") == 0);
            assertThat(second.number("select count(*) from evidence where sha256 = '"
                            + Sha256.of(before).hex() + "'"))
                    .isOne();
            assertThat(second.number("select count(*) from evidence where sha256 = '"
                            + Sha256.of(after).hex() + "'"))
                    .isZero();
            for (String check : List.of("--verify-evidence", "--verify-trail")) {
                Node.Said said = Node.command(second, List.of(), Map.of(), check);
                assertThat(said.code()).as(said.text()).isZero();
            }
        }
    }

    private static String text(OwnDatabase database, String query) throws Exception {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        }
    }
}
