package org.voltdocket.server;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.support.OwnDatabase;

/** Makes many cases of few: each gets recordings of its own rows, so that a run reads as much as it would of real ones. */
final class BenchArchive {

    private static final String CASE = """
            insert into case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop, chemistry, capacity_ah)
            select ?, ?, ?, ?, opened_at, opened_by, opened_workshop, chemistry, capacity_ah from case_file where id =
                (select case_id from evidence where id = ?)""";
    private static final String RAW = "insert into raw_file select encode(sha256(?::text::bytea), 'hex'), bytes from raw_file"
            + " where sha256 = (select sha256 from evidence where id = ?)";
    private static final String ITEM = """
            insert into evidence (id, case_id, sha256, kind, origin, file_name, media_type, ignored, note, received_at,
                received_by, taken_at)
            select ?, ?, encode(sha256(?::text::bytea), 'hex'), kind, origin, file_name, media_type, ignored, note, received_at,
                received_by, taken_at from evidence where id = ?""";

    private final OwnDatabase database;

    BenchArchive(OwnDatabase database) {
        this.database = database;
    }

    /** @return recordings made, none of them judged yet */
    List<UUID> multiply(List<UUID> recordings, int wanted) throws SQLException {
        List<UUID> made = new ArrayList<>();
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            connection.setAutoCommit(false);
            for (int i = 0; i < wanted; i++) {
                made.add(one(connection, recordings.get(i % recordings.size()), i));
            }
            connection.commit();
            connection.setAutoCommit(true);
            statement.execute("vacuum analyze");
        }
        return made;
    }

    private static UUID one(Connection connection, UUID of, int i) throws SQLException {
        UUID file = UUID.randomUUID();
        UUID item = UUID.randomUUID();
        run(connection, CASE, file, CaseNumber.of(5_000_000 + i).value(), "BENCH-" + i, String.format("ZZ0BENCH%09d", i), of);
        run(connection, RAW, item, of);
        run(connection, ITEM, item, file, item, of);
        run(connection, "insert into recording select ?, rows, from_s, to_s from recording where evidence_id = ?", item, of);
        run(
                connection,
                "insert into recording_channel select ?, channel, samples, median_step_s from recording_channel"
                        + " where evidence_id = ?",
                item,
                of);
        run(
                connection,
                "insert into recording_block select ?, channel, block_no, rows, from_s, to_s, low, high, crc32, data"
                        + " from recording_block where evidence_id = ?",
                item,
                of);
        run(connection, "insert into recording_outline select ?, scale, data from recording_outline where evidence_id = ?", item, of);
        // as of another day: what it is recognised by lies elsewhere in the course
        run(
                connection,
                "insert into recording_landmark select code, ?, step + ? from recording_landmark where evidence_id = ?",
                item,
                10 + i * 37 % 2000,
                of);
        return item;
    }

    private static void run(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            if (statement.executeUpdate() < 1) {
                throw new IllegalStateException("nothing was made by " + sql);
            }
        }
    }
}
