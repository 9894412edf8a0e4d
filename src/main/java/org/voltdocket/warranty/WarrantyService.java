package org.voltdocket.warranty;

import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.catalogue.BatteryType;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Money;

/** Computes the amount due for a claim by the warranty terms. */
@Component
public class WarrantyService {

    private final WarrantyTermsService terms;
    private final CatalogueService catalogue;
    private final WarrantyExplanation words;

    WarrantyService(WarrantyTermsService terms, CatalogueService catalogue, WarrantyExplanation words) {
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
}
