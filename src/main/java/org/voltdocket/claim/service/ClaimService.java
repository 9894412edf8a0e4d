package org.voltdocket.claim.service;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.DecisionBasisChange;
import org.voltdocket.claim.decision.DecisionFactory;
import org.voltdocket.claim.repository.ClaimAssembler;
import org.voltdocket.claim.repository.ClaimRepository;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** Reads the claims of cases. A workshop sees its own claims only. */
@Service
@Transactional(readOnly = true)
public class ClaimService {

    /** Acts of the trail that the distributor does not show to workshops: proposed decisions and their refusals. */
    public static final Set<String> INTERNAL_ACTS = Set.of("claim-propose", "claim-refuse");

    private final CaseService cases;
    private final ClaimRepository claims;
    private final ClaimAssembler assembler;
    private final DecisionFactory decisions;

    ClaimService(CaseService cases, ClaimRepository claims, ClaimAssembler assembler, DecisionFactory decisions) {
        this.cases = cases;
        this.claims = claims;
        this.assembler = assembler;
        this.decisions = decisions;
    }

    /** The latest claim of a case; empty if there is none that the actor may see. */
    public Optional<Claim> of(Actor actor, UUID caseId) {
        return claims.latest(caseId)
                .filter(row -> actor.sees(Optional.of(row.workshop())))
                .map(row -> assembler.assemble(actor, row));
    }

    /**
     * The latest claim of a case.
     *
     * @throws RequestException (404) if there is no such case or claim for this actor
     */
    public Claim latest(Actor actor, CaseNumber number) {
        return of(actor, cases.require(actor, number).id())
                .orElseThrow(() -> RequestException.notFound("claim of case " + number));
    }

    /**
     * All claims of a case that the actor may see, oldest first.
     *
     * @throws RequestException (404) if there is no such case for this actor
     */
    public List<Claim> all(Actor actor, CaseNumber number) {
        return all(actor, cases.require(actor, number).id());
    }

    private List<Claim> all(Actor actor, UUID caseId) {
        return claims.all(caseId).stream()
                .filter(row -> actor.sees(Optional.of(row.workshop())))
                .map(row -> assembler.assemble(actor, row))
                .toList();
    }

    /**
     * One claim of a case.
     *
     * @param position of the claim in the case, from 1
     * @throws RequestException (404) if there is no such case or claim for this actor
     */
    public Claim at(Actor actor, CaseNumber number, int position) {
        return all(actor, number).stream()
                .filter(claim -> claim.place() == position)
                .findFirst()
                .orElseThrow(() -> RequestException.notFound("claim " + position + " of case " + number));
    }

    /** The claims of a case that the actor may see without {@code latest}, oldest first. */
    public List<Claim> earlier(Actor actor, UUID caseId, Optional<Claim> latest) {
        if (latest.isEmpty() || latest.get().place() == 1) {
            return List.of();
        }
        return all(actor, caseId).stream()
                .filter(claim -> !claim.id().equals(latest.get().id()))
                .toList();
    }

    /**
     * How the case differs from what the claim was decided on; empty if it does not, or if the claim is not decided.
     *
     * @param latest assessment of the case
     * @param evidence everything that the case contains now
     */
    public Optional<DecisionBasisChange> basisChange(
            Claim claim, Optional<StoredAssessment> latest, List<EvidenceItem> evidence) {
        return claim.decision()
                .flatMap(decision -> DecisionBasisChange.of(
                        decision, decisions.frozen(decision.assessment(), latest), latest, evidence));
    }
}
