package org.voltdocket.claim;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.Assessments;
import org.voltdocket.assessment.KeptAssessment;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;

/** Freezes what a decision rests on: the latest assessment, and all that the case holds. */
@Component
class Decider {

    private final Assessments assessments;
    private final EvidenceArchive archive;
    private final ClaimLimits limits;
    private final Meanwhile meanwhile;

    Decider(Assessments assessments, EvidenceArchive archive, ClaimLimits limits, Meanwhile meanwhile) {
        this.limits = limits;
        this.meanwhile = meanwhile;
        this.assessments = assessments;
        this.archive = archive;
    }

    ClaimDecision decide(Actor actor, CaseRef ref, Money asked, ClaimAct act, ClaimState to, Instant at) {
        KeptAssessment kept = latest(ref, act.ifAssessment());
        Leaning leaning = kept.assessment().leaning();
        boolean against = Grounds.against(leaning, act.action());
        int length = act.reason().codePointCount(0, act.reason().length());
        if (against && length < Grounds.LEAST_REASON) {
            throw new ClaimRefused(
                    "reason",
                    "'reason' says in " + Grounds.LEAST_REASON
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
    ClaimDecision confirm(Actor second, CaseRef ref, Proposal proposal, Instant at) {
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
    KeptAssessment frozen(UUID assessment, Optional<KeptAssessment> latest) {
        return latest.filter(kept -> kept.id().equals(assessment))
                .or(() -> assessments.kept(assessment))
                .orElseThrow(() -> new IllegalStateException("assessment " + assessment + " is not kept"));
    }

    private KeptAssessment latest(CaseRef ref, Optional<UUID> expected) {
        KeptAssessment kept = assessments
                .latest(ref.id())
                .filter(latest -> assessments.upToDate(ref.id()))
                .orElseThrow(ClaimConflict::notJudged);
        expected.filter(seen -> !seen.equals(kept.id())).ifPresent(seen -> {
            throw ClaimConflict.judgedMeanwhile(meanwhile.sinceAssessed(ref.number(), ref.id(), seen));
        });
        return kept;
    }

    private static Money paid(Money asked, ClaimAct act) {
        if (act.action() == ClaimAction.DECLINE) {
            return new Money(java.math.BigDecimal.ZERO, asked.currency());
        }
        Money paid =
                act.amount().map(text -> Money.read(text, asked.currency())).orElse(asked);
        if (paid.amount().compareTo(asked.amount()) > 0) {
            throw new ClaimRefused("amount", "'amount' is at most what is asked for, " + asked + "; read " + paid);
        }
        return paid;
    }

    private Map<UUID, Sha256> evidence(UUID caseId) {
        Map<UUID, Sha256> digests = new LinkedHashMap<>();
        archive.ofCase(caseId).forEach(item -> digests.put(item.id(), item.sha256()));
        return digests;
    }
}
