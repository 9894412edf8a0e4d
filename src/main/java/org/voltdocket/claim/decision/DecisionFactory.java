package org.voltdocket.claim.decision;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.Confirmation;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.claim.view.ConcurrentChanges;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Builds decisions from the latest assessment and the evidence that the case contains. */
@Component
public class DecisionFactory {

    private final AssessmentService assessments;
    private final EvidenceArchive archive;
    private final ClaimLimits limits;
    private final ConcurrentChanges changes;

    DecisionFactory(
            AssessmentService assessments, EvidenceArchive archive, ClaimLimits limits, ConcurrentChanges changes) {
        this.limits = limits;
        this.changes = changes;
        this.assessments = assessments;
        this.archive = archive;
    }

    public ClaimDecision decide(
            Actor actor, CaseReference ref, Money claimed, ClaimStepRequest request, ClaimState to, Instant at) {
        StoredAssessment kept = latest(ref, request.ifAssessment());
        Leaning leaning = kept.assessment().leaning();
        boolean against = DecisionBasis.against(leaning, request.action());
        int length = request.reason().codePointCount(0, request.reason().length());
        if (against && length < DecisionBasis.LEAST_REASON) {
            throw RequestException.invalid(
                    "claim-refused",
                    "reason",
                    "'reason' says in " + DecisionBasis.LEAST_REASON
                            + " characters or more why the claim is decided so although" + " the evidence leans '"
                            + leaning.id() + "'; read " + length);
        }
        return new ClaimDecision(
                to,
                paid(claimed, request),
                request.reason(),
                at,
                actor.user(),
                kept.id(),
                Sha256.of(kept.body().getBytes(StandardCharsets.UTF_8)),
                kept.assessment().rulebook(),
                leaning,
                against,
                limits.inForce(claimed.currency()),
                Optional.empty(),
                evidence(ref.id()));
    }

    /** Confirms a proposal. It must be based on the latest assessment still. */
    public ClaimDecision confirm(Actor second, CaseReference ref, DecisionProposal proposal, Instant at) {
        latest(ref, Optional.of(proposal.assessment()));
        return new ClaimDecision(
                proposal.kind(),
                proposal.paid(),
                proposal.reason(),
                at,
                proposal.by(),
                proposal.assessment(),
                proposal.assessmentSha256(),
                proposal.edition(),
                proposal.leaning(),
                proposal.againstLeaning(),
                Optional.of(proposal.limit()),
                Optional.of(new Confirmation(proposal.at(), second.user())),
                evidence(ref.id()));
    }

    /**
     * The assessment of a decision.
     *
     * @param latest assessment of the case, which saves a query if it is the same
     */
    public StoredAssessment frozen(UUID assessment, Optional<StoredAssessment> latest) {
        return latest.filter(kept -> kept.id().equals(assessment))
                .or(() -> assessments.stored(assessment))
                .orElseThrow(() -> new IllegalStateException("assessment " + assessment + " is not kept"));
    }

    private StoredAssessment latest(CaseReference ref, Optional<UUID> expected) {
        StoredAssessment kept = assessments
                .latest(ref.id())
                .filter(latest -> assessments.upToDate(ref.id()))
                .orElseThrow(ClaimConflicts::notAssessed);
        expected.filter(seen -> !seen.equals(kept.id())).ifPresent(seen -> {
            throw ClaimConflicts.assessmentChanged(changes.sinceAssessed(ref.number(), ref.id(), seen));
        });
        return kept;
    }

    private static Money paid(Money claimed, ClaimStepRequest request) {
        if (request.action() == ClaimAction.DECLINE) {
            return new Money(java.math.BigDecimal.ZERO, claimed.currency());
        }
        Money paid = request.amount()
                .map(text -> Money.read(text, claimed.currency()))
                .orElse(claimed);
        if (paid.amount().compareTo(claimed.amount()) > 0) {
            throw RequestException.invalid(
                    "claim-refused", "amount", "'amount' is at most the amount claimed, " + claimed + "; read " + paid);
        }
        return paid;
    }

    private Map<UUID, Sha256> evidence(UUID caseId) {
        Map<UUID, Sha256> digests = new LinkedHashMap<>();
        archive.ofCase(caseId).forEach(item -> digests.put(item.id(), item.sha256()));
        return digests;
    }
}
