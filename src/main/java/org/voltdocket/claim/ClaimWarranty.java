package org.voltdocket.claim;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.warranty.WarrantyCalculation;
import org.voltdocket.warranty.WarrantyService;
import tools.jackson.databind.json.JsonMapper;

/** The warranty calculation of a claim: computed from the current terms until the claim is decided, frozen from then on. */
@Component
class ClaimWarranty {

    private final WarrantyService warranty;
    private final CaseService cases;
    private final ClaimRepository claims;
    private final JdbcClient db;
    private final JsonMapper json;
    private final Clock clock;

    ClaimWarranty(
            WarrantyService warranty,
            CaseService cases,
            ClaimRepository claims,
            JdbcClient db,
            JsonMapper json,
            Clock clock) {
        this.warranty = warranty;
        this.cases = cases;
        this.claims = claims;
        this.db = db;
        this.json = json;
        this.clock = clock;
    }

    WarrantyCalculation of(ClaimRepository.Row claim) {
        return db.sql("select body from claim_decision_warranty where claim_id = ?")
                .param(claim.id())
                .query(String.class)
                .optional()
                .map(body -> json.readValue(body, WarrantyCalculation.class))
                .orElseGet(() -> calculate(claim));
    }

    /** Stores the calculation with the decision of the claim. */
    void freeze(ClaimRepository.Row claim) {
        WarrantyCalculation calculation = calculate(claim);
        db.sql("insert into claim_decision_warranty (claim_id, terms_id, body) values (?, ?, ?)")
                .param(claim.id())
                .param(calculation.terms() == null ? null : calculation.terms().id())
                .param(json.writeValueAsString(calculation))
                .update();
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
