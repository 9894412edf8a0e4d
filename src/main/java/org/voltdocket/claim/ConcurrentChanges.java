package org.voltdocket.claim;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.trail.Trail;

/** What happened to a case since somebody read it, from the trail: who, what, when. */
@Component
class ConcurrentChanges {

    private final Trail trail;
    private final AssessmentService assessments;

    ConcurrentChanges(Trail trail, AssessmentService assessments) {
        this.trail = trail;
        this.assessments = assessments;
    }

    /** From the first step on that the reader did not see; the last step only where it is not known what was read. */
    List<ClaimChange> since(CaseNumber number, Claim claim, OptionalLong seen) {
        Optional<ClaimStep> first = claim.steps().stream()
                .filter(step -> seen.isPresent() && step.version() > seen.getAsLong())
                .findFirst();
        return first.isPresent()
                ? since(number, first.get().at())
                : claim.lastStep().map(ClaimChange::of).stream().toList();
    }

    /** From the moment on at which the assessment was made that the reader saw. */
    List<ClaimChange> sinceAssessed(CaseNumber number, UUID caseId, UUID seen) {
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
