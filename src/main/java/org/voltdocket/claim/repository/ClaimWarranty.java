package org.voltdocket.claim.repository;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.warranty.WarrantyCalculation;
import org.voltdocket.warranty.WarrantyService;

/** The warranty calculation of a claim: computed from the current terms until the claim is decided, frozen from then on. */
@Component
public class ClaimWarranty {

    private final WarrantyService warranty;
    private final CaseService cases;
    private final ClaimRepository claims;
    private final Clock clock;

    ClaimWarranty(WarrantyService warranty, CaseService cases, ClaimRepository claims, Clock clock) {
        this.warranty = warranty;
        this.cases = cases;
        this.claims = claims;
        this.clock = clock;
    }

    WarrantyCalculation of(ClaimRepository.Row claim) {
        return warranty.frozen(claim.id()).orElseGet(() -> calculate(claim));
    }

    /** Stores the calculation with the decision of the claim. */
    public void freeze(ClaimRepository.Row claim) {
        warranty.freeze(claim.id(), calculate(claim));
    }

    /** As of the day the claim was submitted; as of today for a draft. */
    private WarrantyCalculation calculate(ClaimRepository.Row claim) {
        CaseFacts file = cases.facts(claim.caseId());
        Instant submitted = claims.submittedAt(claim.id()).orElseGet(clock::instant);
        return warranty.calculate(
                file.ref().serial(),
                file.facts(),
                claim.use(),
                LocalDate.ofInstant(submitted, clock.getZone()),
                claim.amount());
    }
}
