package org.voltdocket.claim.repository;

import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** Finds the latest claim of a case for an actor. */
@Component
public class ClaimLocator {

    private final CaseService cases;
    private final ClaimRepository claims;
    private final DecisionProposalRepository proposals;

    ClaimLocator(CaseService cases, ClaimRepository claims, DecisionProposalRepository proposals) {
        this.cases = cases;
        this.claims = claims;
        this.proposals = proposals;
    }

    /** @throws RequestException (404) if there is no such case for this actor */
    public CaseReference requireCase(Actor actor, CaseNumber number) {
        return cases.require(actor, number);
    }

    /** @throws RequestException (404) if there is no such case or claim for this actor */
    public LocatedClaim find(Actor actor, CaseNumber number) {
        CaseReference caseFile = requireCase(actor, number);
        return located(actor, caseFile, claims.latest(caseFile.id()));
    }

    /**
     * Locks the claim until the transaction ends, so that the steps of a claim wait for each other.
     *
     * @throws RequestException (404) if there is no such case or claim for this actor
     */
    public LocatedClaim lock(Actor actor, CaseNumber number) {
        CaseReference caseFile = requireCase(actor, number);
        return located(actor, caseFile, claims.lockLatest(caseFile.id()));
    }

    private LocatedClaim located(Actor actor, CaseReference caseFile, Optional<ClaimRepository.Row> latest) {
        ClaimRepository.Row row = latest.filter(claim -> actor.sees(Optional.of(claim.workshop())))
                .orElseThrow(() -> RequestException.notFound("claim of case " + caseFile.number()));
        return new LocatedClaim(caseFile, row, proposals.waiting(row.id()));
    }
}
