package org.voltdocket.trail;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.ResultSetExtractor;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The table {@code trail_entry}: read and appended to, nothing else. */
@Repository
class TrailRepository {

    /** Any number will do, as long as nothing else locks it; these are the letters "trail". */
    private static final long LOCK = 0x747261696cL;

    private static final String COLUMNS =
            "position, happened_at, actor, role, workshop, act, subject, details, previous_hash, hash, details_sha256, salt";

    private final JdbcClient jdbc;
    private final JdbcTemplate streaming;

    TrailRepository(JdbcClient jdbc, JdbcTemplate template) {
        this.jdbc = jdbc;
        this.streaming = new JdbcTemplate(template.getDataSource());
        this.streaming.setFetchSize(500);
    }

    /** Waits until no other transaction is appending; released when this one ends. */
    void lock() {
        jdbc.sql("select pg_advisory_xact_lock(?)").param(LOCK).query(rs -> {});
    }

    Optional<ChainedEntry> last() {
        return jdbc.sql("select " + COLUMNS + " from trail_entry order by position desc limit 1")
                .query(TrailRepository::link)
                .optional();
    }

    void append(ChainedEntry link) {
        jdbc.sql("insert into trail_entry (" + COLUMNS + ") values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        link.position(),
                        OffsetDateTime.ofInstant(link.at(), ZoneOffset.UTC),
                        link.actor(),
                        link.role(),
                        link.workshop(),
                        link.act(),
                        link.subject(),
                        link.details(),
                        link.previous(),
                        link.hash(),
                        link.detailsSha256(),
                        link.salt())
                .update();
    }

    void eraseDetails(String subject) {
        jdbc.sql("select erase_trail_details(?)").param(subject).query(rs -> {});
    }

    List<ChainedEntry> of(String subject) {
        return jdbc.sql("select " + COLUMNS + " from trail_entry where subject = ? order by position")
                .param(subject)
                .query(TrailRepository::link)
                .list();
    }

    List<ChainedEntry> before(Optional<String> subject, long position, int limit) {
        String of = subject.isPresent() ? "subject = ? and " : "";
        List<Object> values = new ArrayList<>(subject.map(List::<Object>of).orElse(List.of()));
        values.add(position);
        values.add(limit);
        return jdbc.sql("select " + COLUMNS + " from trail_entry where " + of
                        + "position < ? order by position desc limit ?")
                .params(values)
                .query(TrailRepository::link)
                .list();
    }

    /** Hands over entry after entry through a cursor, until the visitor has enough. Needs a transaction around it. */
    void each(Predicate<ChainedEntry> visitor) {
        streaming.query("select " + COLUMNS + " from trail_entry order by position", (ResultSetExtractor<Void>)
                rows -> {
                    while (rows.next() && visitor.test(link(rows, 0))) {
                        // the visitor does the work
                    }
                    return null;
                });
    }

    private static ChainedEntry link(ResultSet row, int number) throws SQLException {
        return new ChainedEntry(
                row.getLong("position"),
                row.getObject("happened_at", OffsetDateTime.class).toInstant(),
                row.getString("actor"),
                row.getString("role"),
                row.getObject("workshop", UUID.class),
                row.getString("act"),
                row.getString("subject"),
                row.getString("details"),
                row.getString("previous_hash"),
                row.getString("hash"),
                row.getString("details_sha256"),
                row.getString("salt"));
    }
}
