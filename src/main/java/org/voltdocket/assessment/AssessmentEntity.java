package org.voltdocket.assessment;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.voltdocket.casefile.AssessmentSummary;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.write.AssessmentJson;
import org.voltdocket.kernel.Sha256;

/** A row of {@code assessment}; never updated. */
@Entity
@Immutable
@Table(name = "assessment")
class AssessmentEntity {

    @Id
    private UUID id;

    /** Assigned by the database, ascending. */
    @Column(insertable = false, updatable = false)
    private Long ordinal;

    private UUID caseId;
    private String edition;

    @Column(name = "rulebook_sha256")
    private String rulebookSha256;

    @Column(name = "input_sha256")
    private String inputSha256;

    private Instant assessedAt;
    private String leaning;
    private String batteryVerdict;
    private String batteryReason;
    private String firstCause;
    private double probability;
    private String body;
    private String regimes;

    protected AssessmentEntity() {}

    AssessmentEntity(UUID caseId, Assessment assessment, Sha256 rulebook, Sha256 input, Instant assessedAt) {
        Assessment.RankedCause first = assessment.causes().get(0);
        this.id = UUID.randomUUID();
        this.caseId = caseId;
        this.edition = assessment.rulebook();
        this.rulebookSha256 = rulebook.hex();
        this.inputSha256 = input.hex();
        this.assessedAt = assessedAt;
        this.leaning = assessment.leaning().id();
        this.batteryVerdict = assessment.batteryVerdict().id();
        this.batteryReason = assessment.batteryReason().id();
        this.firstCause = first.cause().id();
        this.probability = AssessmentJson.number(first.probability()).doubleValue();
        this.body = AssessmentJson.of(assessment, assessedAt);
        this.regimes = StoredAssessmentJson.regimes(assessment);
    }

    AssessmentSummary summary() {
        return new AssessmentSummary(
                Leaning.of(leaning), BatteryVerdict.of(batteryVerdict), Cause.of(firstCause), probability, assessedAt);
    }

    StoredAssessment stored() {
        return new StoredAssessment(
                id,
                caseId,
                new Sha256(rulebookSha256),
                new Sha256(inputSha256),
                assessedAt,
                body,
                StoredAssessmentJson.read(body, regimes));
    }
}
