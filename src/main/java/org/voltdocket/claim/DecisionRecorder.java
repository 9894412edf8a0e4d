package org.voltdocket.claim;

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
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Freezes what a decision rests on: the latest assessment, and all that the case holds. */
@Component
class DecisionRecorder {

    private final AssessmentService assessments;
    private final EvidenceArchive archive;
    private final ClaimLimits limits;
    private final ConcurrentChanges meanwhile;

    DecisionRecorder(
            AssessmentService assessments, EvidenceArchive archive, ClaimLimits limits, ConcurrentChanges meanwhile) {
        this.limits = limits;
        this.meanwhile = meanwhile;
        this.assessments = assessments;
        this.archive = archive;
    }

    ClaimDecision decide(Actor actor, CaseReference ref, Money asked, ClaimStepRequest act, ClaimState to, Instant at) {
        StoredAssessment kept = latest(ref, act.ifAssessment());
        Leaning leaning = kept.assessment().leaning();
        boolean against = DecisionBasis.against(leaning, act.action());
        int length = act.reason().codePointCount(0, act.reason().length());
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
                paid(asked, act),
                act.reason(),
                at,
                actor.user(),
                kept.id(),
                Sha256.of(kept.body().getBytes(StandardCharsets.UTF_8)),
                kept.assessment().rulebook(),
                leaning,
                against,
                limits.inForce(asked.currency()),
                Optional.empty(),
                evidence(ref.id()));
    }

    /** Makes a proposal good: it must still rest on the latest assessment, and a second person does it. */
    ClaimDecision confirm(Actor second, CaseReference ref, DecisionProposal proposal, Instant at) {
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

    /** What a decision rests on; the latest assessment at hand spares the way to the archive. */
    StoredAssessment frozen(UUID assessment, Optional<StoredAssessment> latest) {
        return latest.filter(kept -> kept.id().equals(assessment))
                .or(() -> assessments.stored(assessment))
                .orElseThrow(() -> new IllegalStateException("assessment " + assessment + " is not kept"));
    }

    private StoredAssessment latest(CaseReference ref, Optional<UUID> expected) {
        StoredAssessment kept = assessments
                .latest(ref.id())
                .filter(latest -> assessments.upToDate(ref.id()))
                .orElseThrow(ClaimConflictException::notJudged);
        expected.filter(seen -> !seen.equals(kept.id())).ifPresent(seen -> {
            throw ClaimConflictException.judgedMeanwhile(meanwhile.sinceAssessed(ref.number(), ref.id(), seen));
        });
        return kept;
    }

    private static Money paid(Money asked, ClaimStepRequest act) {
        if (act.action() == ClaimAction.DECLINE) {
            return new Money(java.math.BigDecimal.ZERO, asked.currency());
        }
        Money paid =
                act.amount().map(text -> Money.read(text, asked.currency())).orElse(asked);
        if (paid.amount().compareTo(asked.amount()) > 0) {
            throw RequestException.invalid(
                    "claim-refused", "amount", "'amount' is at most what is asked for, " + asked + "; read " + paid);
        }
        return paid;
    }

    private Map<UUID, Sha256> evidence(UUID caseId) {
        Map<UUID, Sha256> digests = new LinkedHashMap<>();
        archive.ofCase(caseId).forEach(item -> digests.put(item.id(), item.sha256()));
        return digests;
    }
}
