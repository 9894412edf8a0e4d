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
import org.springframework.beans.factory.annotation.Value;
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

    /** An assessment reads all recordings of a case: as much memory as the largest recording, 5 million rows of nine channels. */
    private static final long MAX_MEMORY = 5_000_000L * (8 + 4 * 9);

    private final JdbcClient jdbc;
    private final int maxItems;

    EvidenceItemRepository(JdbcClient jdbc, @Value("${voltdocket.evidence.items-per-case}") int maxItems) {
        this.maxItems = maxItems;
        this.jdbc = jdbc;
    }

    /**
     * Adds an item in the caller's transaction; waits for a concurrent transaction that adds the same one.
     *
     * @return false if the case already has the same file
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

    /** Why a case has more evidence than it may have; empty if it has not. */
    public Optional<String> overLimit(UUID caseId) {
        if (counts(List.of(caseId)).getOrDefault(caseId, 0) > maxItems) {
            return Optional.of("A case may have " + maxItems + " files, and this one has as many. Nothing was stored.");
        }
        return memoryOf(caseId) > MAX_MEMORY
                ? Optional.of(
                        "The recordings of a case may have 5 million rows of nine columns together, and with this one the"
                                + " case would have more. Nothing was stored. Cut the recording to the part that matters.")
                : Optional.empty();
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
