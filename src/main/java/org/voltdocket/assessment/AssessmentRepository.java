package org.voltdocket.assessment;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.Repository;

/** Assessments, appended and read. */
interface AssessmentRepository extends Repository<AssessmentEntity, UUID> {

    AssessmentEntity save(AssessmentEntity row);

    Optional<AssessmentEntity> findById(UUID id);

    Optional<AssessmentEntity> findFirstByCaseIdOrderByOrdinalDesc(UUID caseId);

    List<AssessmentEntity> findByCaseIdOrderByOrdinalDesc(UUID caseId);
}
