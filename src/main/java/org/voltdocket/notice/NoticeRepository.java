package org.voltdocket.notice;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.kernel.CaseNumber;

/** Notices in PostgreSQL. A notice is reviewed once and ends once; it is never removed. */
@Repository
class NoticeRepository {

    private static final String SELECT = """
            select n.*, f.number, w.name as workshop from claim_notice n
            left join case_summary f on f.id = n.case_id left join workshop_summary w on w.id = n.workshop_id
            """;

    private final JdbcClient db;

    NoticeRepository(JdbcClient db) {
        this.db = db;
    }

    /** A current notice of a case or workshop, for comparison with what is found now. */
    record Current(UUID id, String kind, String key, List<String> grounds) {

        boolean equalsResult(FinderResult found) {
            return kind.equals(found.kind().id()) && key.equals(found.key()) && grounds.equals(found.grounds());
        }
    }

    List<Current> current(UUID subject) {
        return db.sql("select id, kind, key, grounds from claim_notice"
                        + " where coalesce(case_id, workshop_id) = ? and gone_at is null")
                .param(subject)
                .query((row, number) -> new Current(
                        row.getObject("id", UUID.class),
                        row.getString("kind"),
                        row.getString("key"),
                        texts(row.getArray("grounds"))))
                .list();
    }

    /** @param ofCase whether the subject is a case; else it is a workshop */
    void add(UUID subject, boolean ofCase, FinderResult found, Instant at) {
        db.sql("insert into claim_notice (id, case_id, workshop_id, kind, key, grounds, others, found_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?)")
                .param(UUID.randomUUID())
                .param(ofCase ? subject : null)
                .param(ofCase ? null : subject)
                .param(found.kind().id())
                .param(found.key())
                .param(found.grounds().toArray(String[]::new))
                .param(found.others().stream()
                        .map(FinderResult.Other::number)
                        .distinct()
                        .limit(50)
                        .toArray(String[]::new))
                .param(at.atOffset(ZoneOffset.UTC))
                .update();
    }

    void end(UUID notice, Instant at) {
        db.sql("update claim_notice set gone_at = ? where id = ? and gone_at is null")
                .params(at.atOffset(ZoneOffset.UTC), notice)
                .update();
    }

    /** @return false if it is reviewed already */
    boolean review(UUID notice, Instant at, String by, String reason) {
        return db.sql("update claim_notice set looked_at = ?, looked_by = ?, looked_reason = ?"
                                + " where id = ? and looked_at is null")
                        .params(at.atOffset(ZoneOffset.UTC), by, reason, notice)
                        .update()
                == 1;
    }

    Optional<Notice> find(UUID notice) {
        return db.sql(SELECT + "where n.id = ?")
                .param(notice)
                .query(NoticeRepository::notice)
                .optional();
    }

    /** The notices of a case and of its workshops, open ones first, then the newest. */
    List<Notice> ofCase(UUID caseId) {
        return db.sql(SELECT + """
                        where n.case_id = :case
                           or n.workshop_id in (select workshop_id from case_participant where case_id = :case)
                        order by n.looked_at is not null or n.gone_at is not null, n.found_at desc, n.id limit 100""")
                .param("case", caseId)
                .query(NoticeRepository::notice)
                .list();
    }

    List<Notice> open(Optional<NoticeKind> kind, int limit) {
        return db.sql(SELECT + "where n.looked_at is null and n.gone_at is null"
                        + (kind.isPresent() ? " and n.kind = :kind" : "")
                        + " order by n.found_at desc, n.id limit :limit")
                .param("kind", kind.map(NoticeKind::id).orElse(""))
                .param("limit", limit)
                .query(NoticeRepository::notice)
                .list();
    }

    Map<String, Integer> openCounts(Collection<String> numbers) {
        Map<String, Integer> counts = new HashMap<>();
        if (!numbers.isEmpty()) {
            db.sql("select f.number, count(*) as open from claim_notice n join case_summary f on f.id = n.case_id"
                            + " where f.number in (:numbers) and n.looked_at is null and n.gone_at is null"
                            + " group by f.number")
                    .param("numbers", numbers)
                    .query(row -> {
                        counts.put(row.getString("number"), row.getInt("open"));
                    });
        }
        return counts;
    }

    private static Notice notice(ResultSet row, int number) throws SQLException {
        Instant looked = instant(row, "looked_at");
        return new Notice(
                row.getObject("id", UUID.class),
                Optional.ofNullable(row.getString("number")).map(CaseNumber::new),
                Optional.ofNullable(row.getString("workshop")),
                NoticeKind.of(row.getString("kind")),
                texts(row.getArray("grounds")),
                texts(row.getArray("others")).stream().map(CaseNumber::new).toList(),
                instant(row, "found_at"),
                looked == null
                        ? Optional.empty()
                        : Optional.of(
                                new Notice.Looked(looked, row.getString("looked_by"), row.getString("looked_reason"))),
                Optional.ofNullable(instant(row, "gone_at")));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    private static List<String> texts(Array array) throws SQLException {
        return Arrays.asList((String[]) array.getArray());
    }
}
