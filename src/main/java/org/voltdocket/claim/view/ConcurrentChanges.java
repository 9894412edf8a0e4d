package org.voltdocket.claim.view;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.trail.Trail;

/** Finds the changes of a case since the caller read it, from the trail. */
@Component
public class ConcurrentChanges {

    private final Trail trail;
    private final AssessmentService assessments;

    ConcurrentChanges(Trail trail, AssessmentService assessments) {
        this.trail = trail;
        this.assessments = assessments;
    }

    /** Changes since the version that the caller read; only the last step if that version is unknown. */
    public List<ClaimChange> since(CaseNumber number, Claim claim, OptionalLong seen) {
        Optional<ClaimStep> first = claim.steps().stream()
                .filter(step -> seen.isPresent() && step.version() > seen.getAsLong())
                .findFirst();
        return first.isPresent()
                ? since(number, first.get().at())
                : claim.lastStep().map(ClaimChange::of).stream().toList();
    }

    /** Changes since the assessment that the caller read. */
    public List<ClaimChange> sinceAssessed(CaseNumber number, UUID caseId, UUID seen) {
        return assessments.all(caseId).stream()
                .filter(kept -> kept.id().equals(seen))
                .findFirst()
                .map(StoredAssessment::assessedAt)
                .map(at -> since(number, at))
                .orElse(List.of());
    }

    private List<ClaimChange> since(CaseNumber number, Instant from) {
        return trail.of(number.value()).stream()
                .filter(entry -> !entry.at().isBefore(from))
                .map(ClaimChange::of)
                .toList();
    }
}
