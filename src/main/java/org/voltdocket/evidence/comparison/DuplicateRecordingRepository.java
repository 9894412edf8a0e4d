package org.voltdocket.evidence.comparison;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.evidence.DuplicateRecordings.Match;
import org.voltdocket.kernel.Sha256;

/** Matches of recordings, and the queue of recordings to compare, in PostgreSQL. */
@Component
class DuplicateRecordingRepository {

    private static final String MATCHES = """
            select t.evidence_id, t.other_id, o.case_id as other_case_id, t.correlation, t.later_s, t.overlap_s
            from duplicate_recording t join evidence o on o.id = t.other_id join evidence e on e.id = t.evidence_id
            """;
    private static final String ORDER = " order by t.evidence_id, t.correlation desc, t.other_id";

    private final JdbcClient jdbc;

    DuplicateRecordingRepository(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * A recording that matches one received earlier.
     *
     * @param originalCaseId the case of the earlier recording
     */
    record Copy(Sha256 sha256, UUID originalCaseId) {}

    List<Match> ofRecording(UUID evidenceId) {
        return jdbc.sql(MATCHES + "where t.evidence_id = ?" + ORDER)
                .param(evidenceId)
                .query(Match.class)
                .list();
    }

    List<Match> ofCases(Set<UUID> caseIds) {
        return caseIds.isEmpty()
                ? List.of()
                : jdbc.sql(MATCHES + "where e.case_id in (:cases)" + ORDER)
                        .param("cases", caseIds)
                        .query(Match.class)
                        .list();
    }

    List<Copy> copies(UUID caseId) {
        return jdbc.sql("""
                        select e.sha256, o.case_id from duplicate_recording t
                        join evidence e on e.id = t.evidence_id join evidence o on o.id = t.other_id
                        where e.case_id = ? and o.ordinal < e.ordinal order by e.sha256, o.case_id""")
                .param(caseId)
                .query((row, n) -> new Copy(new Sha256(row.getString(1)), row.getObject(2, UUID.class)))
                .list();
    }

    /** Stores a match in both directions. */
    void add(Match match) {
        insert(match.evidenceId(), match.otherId(), match, match.laterS());
        insert(match.otherId(), match.evidenceId(), match, -match.laterS());
    }

    private void insert(UUID one, UUID other, Match match, double laterS) {
        jdbc.sql("""
                        insert into duplicate_recording (evidence_id, other_id, correlation, later_s, overlap_s)
                        values (?, ?, ?, ?, ?) on conflict do nothing""")
                .param(one)
                .param(other)
                .param(match.correlation())
                .param(laterS)
                .param(match.overlapS())
                .update();
    }

    List<UUID> queuedCases() {
        return jdbc.sql("select distinct case_id from recording_to_compare order by case_id")
                .query(UUID.class)
                .list();
    }

    /** The queued recordings of a case, each with whether it has an outline; locks them until the transaction ends. */
    Map<UUID, Boolean> lockQueued(UUID caseId) {
        Map<UUID, Boolean> queued = new TreeMap<>();
        jdbc.sql("select evidence_id, outlined from recording_to_compare where case_id = ? order by 1 for update")
                .param(caseId)
                .query(row -> {
                    queued.put(row.getObject(1, UUID.class), row.getBoolean(2));
                });
        return queued;
    }

    void dequeue(UUID evidenceId) {
        jdbc.sql("delete from recording_to_compare where evidence_id = ?")
                .param(evidenceId)
                .update();
    }

    /** Serialises comparisons: of two at the same time, neither would see the new recording of the other. */
    void lockComparison() {
        jdbc.sql("select 1 from pg_advisory_xact_lock(hashtextextended('recording twins', 0))")
                .query(Integer.class)
                .single();
    }
}
