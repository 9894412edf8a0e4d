package org.voltdocket.dossier;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.RelatedCases;
import org.voltdocket.casefile.pending.AssessmentFailure;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.DecisionBasisChange;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.trail.TrailEntry;

/**
 * Everything about a case at one time, as one actor may see it.
 *
 * @param relatives other cases of the same vehicle or battery
 * @param evidence in the order received
 * @param assessment the latest; empty until the first
 * @param claim the latest that the actor may see; empty until the workshop claims
 * @param basisChange how the case differs from the basis of that claim's decision
 * @param failure why the latest change could not be assessed
 * @param pendingSince since when a change waits for its assessment; empty if the assessment covers everything
 * @param trail what happened to it, oldest first
 * @param workshopNames by id, of the workshops that the case belongs to, the one that opened it first
 */
public record Dossier(
        CaseFacts file,
        RelatedCases relatives,
        List<EvidenceItem> evidence,
        Optional<StoredAssessment> assessment,
        Optional<AssessmentFailure> failure,
        Optional<Instant> pendingSince,
        Optional<Claim> claim,
        Optional<DecisionBasisChange> basisChange,
        List<TrailEntry> trail,
        Map<UUID, String> workshopNames) {

    public Dossier {
        evidence = List.copyOf(evidence);
        trail = List.copyOf(trail);
    }

    /** Findings that rest on this item, in the order of the assessment. */
    public List<Assessment.Finding> findingsOf(EvidenceItem item) {
        String id = item.id().toString();
        return assessment.stream()
                .flatMap(kept -> kept.assessment().findings().stream())
                .filter(finding -> id.equals(finding.evidence()))
                .toList();
    }

    /** Regimes that the assessment sees in this recording; empty for anything else. */
    public List<Assessment.RegimeSpan> regimesOf(EvidenceItem item) {
        return assessment
                .map(kept -> kept.assessment().regimes().getOrDefault(item.id().toString(), List.of()))
                .orElse(List.of());
    }

    /** The time of the latest change to the case; printed documents bear this date. */
    public Instant changedAt() {
        return Stream.of(
                        trail.stream().map(TrailEntry::at),
                        assessment.stream().map(StoredAssessment::assessedAt),
                        claim.flatMap(Claim::decision).stream().map(ClaimDecision::at))
                .flatMap(times -> times)
                .max(Comparator.naturalOrder())
                .filter(at -> at.isAfter(file.openedAt()))
                .orElse(file.openedAt());
    }
}
