package org.voltdocket.claim;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** The claims of the cases. */
public interface ClaimService {

    /** Acts in the trail that are the distributor's own until a decision stands; a workshop does not see them. */
    Set<String> INTERNAL_ACTS = Set.of("claim-propose", "claim-refuse");

    /** The latest claim of a case that the actor may see; a workshop sees its own only. */
    Optional<Claim> of(Actor actor, UUID caseId);

    /** All claims of a case that the actor may see, oldest first; the last is the one that {@link #of} gives. */
    List<Claim> all(Actor actor, UUID caseId);

    /**
     * How the grounds of the case differ from those the claim was decided on; empty where they do not, or it is not decided.
     *
     * @param latest assessment of the case
     * @param held all that the case holds now
     */
    Optional<DecisionBasisChange> otherGrounds(Claim claim, Optional<StoredAssessment> latest, List<EvidenceItem> held);

    /** What can be asked for: kinds of evidence, then names of facts. */
    List<String> askable();

    /**
     * Opens a claim as a draft. For {@code WORKSHOP}.
     *
     * @param amount text such as {@code 129.90}
     * @param currency ISO 4217, such as {@code EUR}
     * @param useClass identifier of a {@link org.voltdocket.warranty.UseClass}; null or blank for private use
     * @throws org.voltdocket.casefile.NotFoundException if there is no such case for this actor
     * @throws org.springframework.security.access.AccessDeniedException for other roles
     * @throws RequestException if amount or currency cannot be right
     * @throws ClaimConflictException if the case has a claim that is not at its end
     */
    Claim open(Actor actor, CaseNumber number, String amount, String currency, String useClass);

    /**
     * Takes one step.
     *
     * @throws org.voltdocket.casefile.NotFoundException if there is no such case or claim for this actor
     * @throws org.springframework.security.access.AccessDeniedException if the step is not this role's
     * @throws ClaimConflictException if the state does not allow the step, or the caller saw something else
     * @throws RequestException if reason, items or amount are missing or cannot be right
     */
    Claim act(Actor actor, CaseNumber number, ClaimStepRequest act);

    /**
     * Asks whether something may be given to this thing now, before its file is taken.
     *
     * @throws RuntimeException as {@link #answer}
     */
    void requireAsked(Actor actor, CaseNumber number, int position);

    /**
     * Gives something to one thing that was asked for; the claim stays in {@link ClaimState#EVIDENCE_ASKED} until the workshop
     * says that all is sent. For {@code WORKSHOP}.
     *
     * @throws org.voltdocket.casefile.NotFoundException if there is no such case, claim or item for this actor
     * @throws org.springframework.security.access.AccessDeniedException for other roles
     * @throws ClaimConflictException if nothing is asked for now
     * @throws RequestException if it holds neither evidence nor words
     */
    Claim answer(Actor actor, CaseNumber number, RequestedItemAnswer answer);
}
