package org.voltdocket.claim;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
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
    private final Meanwhile meanwhile;

    Decider(Assessments assessments, EvidenceArchive archive, Meanwhile meanwhile) {
        this.meanwhile = meanwhile;
        this.assessments = assessments;
        this.archive = archive;
    }

    ClaimDecision decide(Actor actor, CaseRef ref, Money asked, ClaimAct act, ClaimState to, Instant at) {
        UUID caseId = ref.id();
        KeptAssessment kept = assessments
                .latest(caseId)
                .filter(latest -> assessments.upToDate(caseId))
                .orElseThrow(ClaimConflict::notJudged);
        if (act.ifAssessment().filter(seen -> !seen.equals(kept.id())).isPresent()) {
            UUID seen = act.ifAssessment().orElseThrow();
            throw ClaimConflict.judgedMeanwhile(meanwhile.sinceAssessed(ref.number(), caseId, seen));
        }
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
                evidence(caseId));
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
