package org.voltdocket.evidence.storage;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Sha256;

/** Items of evidence in PostgreSQL. */
@Component
public class EvidenceItemRepository {

    private static final String SELECT = """
            select e.*, f.bytes, r.rows, r.to_s - r.from_s as duration_s,
                   array(select channel from recording_channel c where c.evidence_id = e.id) as channels
            from evidence e join raw_file f using (sha256) left join recording r on r.evidence_id = e.id
            """;

    private final JdbcClient jdbc;

    EvidenceItemRepository(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Adds an item in the caller's transaction; waits for a concurrent transaction that adds the same one.
     *
     * @return false if the case has the same bytes already
     */
    public boolean add(EvidenceItem item) {
        return jdbc.sql("""
                        insert into evidence (id, case_id, sha256, kind, origin, file_name, media_type, ignored, note,
                            received_at, received_by, taken_at)
                        values (:id, :case, :sha256, :kind, :origin, :name, :type, :ignored, :note, :at, :by, :taken)
                        on conflict do nothing""")
                        .param("id", item.id())
                        .param("case", item.caseId())
                        .param("sha256", item.sha256().hex())
                        .param("kind", item.kind().id())
                        .param("origin", item.origin().id())
                        .param("name", item.fileName())
                        .param("type", item.mediaType())
                        .param("ignored", item.ignored().toArray(String[]::new))
                        .param("note", item.note())
                        .param("at", item.receivedAt().atOffset(ZoneOffset.UTC))
                        .param("by", item.receivedBy())
                        .param(
                                "taken",
                                item.takenAt() == null ? null : item.takenAt().toString())
                        .update()
                == 1;
    }

    public Optional<EvidenceItem> find(UUID id) {
        return jdbc.sql(SELECT + "where e.id = ?")
                .param(id)
                .query(EvidenceItemRepository::item)
                .optional();
    }

    public Optional<EvidenceItem> find(UUID caseId, Sha256 sha256) {
        return jdbc.sql(SELECT + "where e.case_id = ? and e.sha256 = ?")
                .param(caseId)
                .param(sha256.hex())
                .query(EvidenceItemRepository::item)
                .optional();
    }

    /** Items of any case over the same bytes. */
    public List<EvidenceItem> sameBytes(Sha256 sha256) {
        return jdbc.sql(SELECT + "where e.sha256 = ? order by e.ordinal")
                .param(sha256.hex())
                .query(EvidenceItemRepository::item)
                .list();
    }

    List<EvidenceItem> ofCase(UUID caseId) {
        return jdbc.sql(SELECT + "where e.case_id = ? order by e.ordinal")
                .param(caseId)
                .query(EvidenceItemRepository::item)
                .list();
    }

    Set<UUID> erased(UUID caseId) {
        return new HashSet<>(
                jdbc.sql("select x.evidence_id from evidence_erased x join evidence e on e.id = x.evidence_id"
                                + " join raw_file f using (sha256) where e.case_id = ? and f.place = 'erased'")
                        .param(caseId)
                        .query(UUID.class)
                        .list());
    }

    Map<UUID, Integer> counts(Collection<UUID> caseIds) {
        Map<UUID, Integer> counts = new HashMap<>();
        if (!caseIds.isEmpty()) {
            jdbc.sql("select case_id, count(*) as items from evidence where case_id in (:cases) group by case_id")
                    .param("cases", caseIds)
                    .query(row -> {
                        counts.put(row.getObject("case_id", UUID.class), row.getInt("items"));
                    });
        }
        return counts;
    }

    /** Bytes that the recordings of a case take when all are read, as an assessment does. */
    public long memoryOf(UUID caseId) {
        return jdbc.sql("""
                        select coalesce(sum(r.rows::bigint * (8 + 4 * (
                            select count(*) from recording_channel c where c.evidence_id = r.evidence_id))), 0)::bigint
                        from recording r join evidence e on e.id = r.evidence_id where e.case_id = ?""").param(caseId).query(Long.class).single();
    }

    private static EvidenceItem item(ResultSet row, int number) throws SQLException {
        String taken = row.getString("taken_at");
        return new EvidenceItem(
                row.getObject("id", UUID.class),
                row.getObject("case_id", UUID.class),
                new Sha256(row.getString("sha256")),
                EvidenceKind.of(row.getString("kind")),
                Origin.of(row.getString("origin")),
                row.getString("file_name"),
                row.getString("media_type"),
                row.getLong("bytes"),
                row.getObject("rows", Integer.class),
                row.getObject("duration_s", Double.class),
                Arrays.stream(texts(row.getArray("channels")))
                        .map(Channel::of)
                        .sorted()
                        .toList(),
                List.of(texts(row.getArray("ignored"))),
                row.getString("note"),
                row.getObject("received_at", OffsetDateTime.class).toInstant(),
                row.getString("received_by"),
                taken == null ? null : OffsetDateTime.parse(taken));
    }

    private static String[] texts(Array array) throws SQLException {
        return (String[]) array.getArray();
    }
}
