package org.voltdocket.warranty;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Optional;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.Money;

/** The arithmetic of terms. No clock, no database: the same input gives the same sum. */
final class WarrantyCalculator {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private WarrantyCalculator() {}

    /** The day a term runs from: that of sale, or that of fitting where the day of sale is not known. */
    static Optional<LocalDate> start(Facts facts) {
        return Optional.ofNullable(facts.battery().soldOn())
                .or(() -> Optional.ofNullable(facts.battery().fittedOn()));
    }

    /**
     * @param start as {@link #start} gives it
     * @param claimedOn not before {@code start}
     */
    static WarrantyCalculation sum(
            WarrantyTermsEntry terms, Facts facts, LocalDate start, LocalDate claimedOn, Money asked) {
        int month = WarrantyMonths.month(start, claimedOn);
        WarrantyMonths.Span age = WarrantyMonths.between(start, claimedOn);
        Integer driven = drivenKm(facts);
        WarrantyCalculation.Outside outside = outside(terms, start, claimedOn, month, driven);
        BigDecimal percent = outside == null ? terms.percent(month) : BigDecimal.ZERO;
        String standing = outside != null ? "outside" : percent.compareTo(HUNDRED) == 0 ? "free" : "pro-rata";
        return new WarrantyCalculation(
                standing,
                terms.use().id(),
                start,
                facts.battery().soldOn() == null ? "fitted" : "sold",
                claimedOn,
                age.months(),
                age.days(),
                month,
                driven,
                WarrantyCalculation.TermsView.of(terms),
                percent,
                share(asked, percent).text(),
                outside,
                null);
    }

    /** Rounded half up to the currency's least unit, as is usual in trade (DIN 1333, from memory). */
    static Money share(Money asked, BigDecimal percent) {
        BigDecimal amount =
                asked.amount().multiply(percent).divide(HUNDRED, asked.amount().scale(), RoundingMode.HALF_UP);
        return new Money(amount, asked.currency());
    }

    /** Kilometres since fitting; null where either reading is missing or they run backwards. */
    private static Integer drivenKm(Facts facts) {
        Double now = facts.vehicle().odometerKm();
        Double fitted = facts.battery().fittedOdometerKm();
        return now == null || fitted == null || now < fitted ? null : (int) Math.round(now - fitted);
    }

    private static WarrantyCalculation.Outside outside(
            WarrantyTermsEntry terms, LocalDate start, LocalDate claimedOn, int month, Integer driven) {
        LocalDate end = WarrantyMonths.lastDay(start, terms.lastMonth());
        boolean late = terms.lastMonth() == 0 || month > terms.lastMonth();
        boolean far = driven != null
                && terms.mileageKm().filter(limit -> driven > limit).isPresent();
        if (!late && !far) {
            return null;
        }
        WarrantyMonths.Span over = late ? WarrantyMonths.between(end, claimedOn) : null;
        return new WarrantyCalculation.Outside(
                end,
                late ? over.months() : null,
                late ? over.days() : null,
                far ? driven - terms.mileageKm().orElseThrow() : null);
    }
}
