package org.voltdocket.assessment;

import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.Sha256;

/** Appends assessments, one case at a time on all nodes together. */
@Component
class AssessmentStore {

    private final AssessmentRepository rows;
    private final CaseService cases;
    private final JdbcClient db;
    private final Clock clock;

    AssessmentStore(AssessmentRepository rows, CaseService cases, JdbcClient db, Clock clock) {
        this.rows = rows;
        this.cases = cases;
        this.db = db;
        this.clock = clock;
    }

    /** Waits until no other transaction assesses the case; the lock is held until the transaction ends. */
    void lock(UUID caseId) {
        db.sql("select 1 from pg_advisory_xact_lock(hashtextextended(?, 0))")
                .param("assessment " + caseId)
                .query(Integer.class)
                .single();
    }

    Optional<AssessmentEntity> latest(UUID caseId) {
        return rows.findFirstByCaseIdOrderByOrdinalDesc(caseId);
    }

    /** Appends an assessment and copies its summary to the case. */
    void append(UUID caseId, Assessment assessment, Sha256 rulebook, Sha256 input) {
        AssessmentEntity row = new AssessmentEntity(caseId, assessment, rulebook, input, clock.instant());
        rows.save(row);
        cases.saveAssessmentSummary(caseId, row.summary());
    }
}
