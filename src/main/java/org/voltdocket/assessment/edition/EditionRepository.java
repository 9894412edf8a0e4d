package org.voltdocket.assessment.edition;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/** Editions in PostgreSQL. Moments are the database's, so that the order is the same whichever node wrote. */
@Component
class EditionRepository {

    private static final String COLUMNS = "name, sha256, released, origin, kept_at, kept_by";

    private final JdbcClient db;

    EditionRepository(JdbcClient db) {
        this.db = db;
    }

    /** Every text, newest first. */
    List<Edition> all() {
        return db.sql("select " + COLUMNS + " from edition order by ordinal desc")
                .query(EditionRepository::edition)
                .list();
    }

    Optional<Edition> find(Sha256 sha256) {
        return db.sql("select " + COLUMNS + " from edition where sha256 = ?")
                .param(sha256.hex())
                .query(EditionRepository::edition)
                .optional();
    }

    /** The released text of a name, or the newest where none is released. */
    Optional<Edition> find(String name) {
        return db.sql("select " + COLUMNS + " from edition where name = ? order by released desc, ordinal desc limit 1")
                .param(name)
                .query(EditionRepository::edition)
                .optional();
    }

    Optional<byte[]> content(Sha256 sha256) {
        return db.sql("select content from edition where sha256 = ?")
                .param(sha256.hex())
                .query(byte[].class)
                .optional();
    }

    /** @return false if this text, or a released one of the same name, is there already */
    boolean keep(String name, Sha256 sha256, boolean released, String origin, byte[] content, String by) {
        return db.sql("insert into edition (sha256, name, released, origin, content, kept_at, kept_by)"
                                + " values (?, ?, ?, ?, ?, clock_timestamp(), ?) on conflict do nothing")
                        .param(sha256.hex())
                        .param(name)
                        .param(released)
                        .param(origin)
                        .param(content)
                        .param(by)
                        .update()
                == 1;
    }

    Optional<Sha256> inForce() {
        return db.sql("select sha256 from edition_in_force order by ordinal desc limit 1")
                .query((row, n) -> new Sha256(row.getString(1)))
                .optional();
    }

    List<EditionActivation> history() {
        return db.sql("select e.name, f.sha256, f.since, f.put_by, f.reason"
                        + " from edition_in_force f join edition e using (sha256) order by f.ordinal desc")
                .query((row, n) -> new EditionActivation(
                        row.getString("name"),
                        new Sha256(row.getString("sha256")),
                        row.getTimestamp("since").toInstant(),
                        row.getString("put_by"),
                        row.getString("reason")))
                .list();
    }

    /** One at a time: the next waits until this transaction ends. */
    void lockInForce() {
        db.sql("select pg_advisory_xact_lock(hashtextextended('edition in force', 0))")
                .query(rs -> {});
    }

    void putInForce(Sha256 sha256, String by, String reason) {
        db.sql("insert into edition_in_force (sha256, since, put_by, reason) values (?, clock_timestamp(), ?, ?)")
                .param(sha256.hex())
                .param(by)
                .param(reason)
                .update();
    }

    private static Edition edition(ResultSet row, int number) throws SQLException {
        return new Edition(
                row.getString("name"),
                new Sha256(row.getString("sha256")),
                row.getBoolean("released"),
                row.getString("origin"),
                row.getTimestamp("kept_at").toInstant(),
                row.getString("kept_by"));
    }
}
