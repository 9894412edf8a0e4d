package org.voltdocket.assessment.rerun;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The chunks of a run, and what was found in them. */
@Component
class ChunkRepository {

    private final JdbcClient db;

    ChunkRepository(JdbcClient db) {
        this.db = db;
    }

    /** Some cases of a run. */
    record Chunk(int seq, List<UUID> cases) {}

    /** Claims a chunk that nobody works on, until the transaction ends; empty where there is none. */
    Optional<Chunk> claim(UUID run) {
        return db.sql("""
                        select seq, case_ids from reassessment_chunk where reassessment_id = ? and done_at is null
                        order by seq limit 1 for update skip locked""")
                .param(run)
                .query((row, n) -> new Chunk(
                        row.getInt(1), Arrays.asList((UUID[]) row.getArray(2).getArray())))
                .optional();
    }

    void done(UUID run, Chunk chunk, double seconds) {
        db.sql("update reassessment_chunk set done_at = clock_timestamp(),"
                        + " started_at = clock_timestamp() - make_interval(secs => ?)"
                        + " where reassessment_id = ? and seq = ?")
                .param(seconds)
                .param(run)
                .param(chunk.seq())
                .update();
    }

    void changed(UUID run, UUID caseId, String[] before, String[] after, AssessmentDifference difference) {
        db.sql("insert into reassessment_change values (?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing")
                .param(run)
                .param(caseId)
                .param(before[0])
                .param(after[0])
                .param(before[1])
                .param(after[1])
                .param(difference.findings().toArray(String[]::new))
                .param(difference.rules().toArray(String[]::new))
                .update();
    }

    void failed(UUID run, UUID caseId, String reason) {
        db.sql("insert into reassessment_failure values (?, ?, ?) on conflict do nothing")
                .param(run)
                .param(caseId)
                .param(reason)
                .update();
    }
}
