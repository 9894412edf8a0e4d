package org.voltdocket.warranty;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.catalogue.BatteryType;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Money;
import tools.jackson.databind.json.JsonMapper;

/** Computes the amount due for a claim by the warranty terms. */
@Component
public class WarrantyService {

    private final WarrantyTermsService terms;
    private final CatalogueService catalogue;
    private final WarrantyExplanation words;
    private final JdbcClient db;
    private final JsonMapper json;

    WarrantyService(
            WarrantyTermsService terms,
            CatalogueService catalogue,
            WarrantyExplanation words,
            JdbcClient db,
            JsonMapper json) {
        this.db = db;
        this.json = json;
        this.terms = terms;
        this.catalogue = catalogue;
        this.words = words;
    }

    /**
     * The sum by the terms in force on the day of sale.
     *
     * @param claimedOn the day the claim was handed in
     */
    public WarrantyCalculation calculate(
            BatterySerial serial, Facts facts, UseClass use, LocalDate claimedOn, Money asked) {
        Optional<LocalDate> start = WarrantyCalculator.start(facts);
        if (start.isEmpty() || claimedOn.isBefore(start.get())) {
            return words.said(without("unknown", use, start.orElse(null), facts, claimedOn), asked);
        }
        Optional<BatteryType> type = catalogue.of(serial).map(Product::type);
        Chemistry chemistry =
                type.map(BatteryType::chemistry).orElse(facts.battery().chemistry());
        WarrantyCalculation sum = terms.inForce(type.map(BatteryType::code), chemistry, use, start.get())
                .map(found -> WarrantyCalculator.sum(found, facts, start.get(), claimedOn, asked))
                .orElseGet(() -> without("no-terms", use, start.get(), facts, claimedOn));
        return words.said(sum, asked);
    }

    private static WarrantyCalculation without(
            String standing, UseClass use, LocalDate start, Facts facts, LocalDate claimedOn) {
        String from = start == null ? null : facts.battery().soldOn() == null ? "fitted" : "sold";
        return new WarrantyCalculation(
                standing, use.id(), start, from, claimedOn, null, null, null, null, null, null, null, null, null);
    }

    /** Stores the calculation that a decision is based on; it is never changed. */
    public void freeze(UUID claimId, WarrantyCalculation sum) {
        db.sql("insert into warranty_calculation (claim_id, terms_id, body) values (?, ?, ?)")
                .param(claimId)
                .param(sum.terms() == null ? null : sum.terms().id())
                .param(json.writeValueAsString(sum))
                .update();
    }

    /** The calculation that the decision of the claim is based on; empty if the claim is not decided. */
    public Optional<WarrantyCalculation> frozen(UUID claimId) {
        return db.sql("select body from warranty_calculation where claim_id = ?")
                .param(claimId)
                .query(String.class)
                .optional()
                .map(body -> json.readValue(body, WarrantyCalculation.class));
    }
}
