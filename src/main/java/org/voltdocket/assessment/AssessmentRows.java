package org.voltdocket.assessment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.Repository;

/** Assessments, appended and read. */
interface AssessmentRows extends Repository<AssessmentRow, UUID> {

    AssessmentRow save(AssessmentRow row);

    Optional<AssessmentRow> findById(UUID id);

    Optional<AssessmentRow> findFirstByCaseIdOrderByOrdinalDesc(UUID caseId);

    List<AssessmentRow> findByCaseIdOrderByOrdinalDesc(UUID caseId);
}
