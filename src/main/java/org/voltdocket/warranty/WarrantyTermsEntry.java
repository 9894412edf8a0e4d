package org.voltdocket.warranty;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.Chemistry;

/**
 * Warranty terms as recorded.
 *
 * @param batteryType code of the type they are for; empty where they are for a chemistry
 * @param chemistry empty where they are for a type
 * @param validFrom for batteries sold on this day or later, until terms with a later day
 * @param freeMonths months of life in which everything is paid, 0 to 120
 * @param proRata what is paid afterwards; months rise, percentages fall; may be empty
 * @param mileageKm most kilometres since fitting; empty where there is no limit
 */
public record WarrantyTermsEntry(
        UUID id,
        Optional<String> batteryType,
        Optional<Chemistry> chemistry,
        UseClass use,
        LocalDate validFrom,
        int freeMonths,
        List<ProRata> proRata,
        Optional<Integer> mileageKm,
        String reason,
        Instant recordedAt,
        String recordedBy) {

    public WarrantyTermsEntry {
        proRata = List.copyOf(proRata);
    }

    /** Last month of life in which anything is paid. */
    public int lastMonth() {
        return proRata.isEmpty() ? freeMonths : proRata.get(proRata.size() - 1).throughMonth();
    }

    /** What is paid in this month of life, counted from 1: 0 to 100 per cent. */
    public BigDecimal percent(int month) {
        if (month <= freeMonths) {
            return BigDecimal.valueOf(100);
        }
        return proRata.stream()
                .filter(row -> month <= row.throughMonth())
                .findFirst()
                .map(ProRata::percent)
                .orElse(BigDecimal.ZERO);
    }

    /** The type's code, or the chemistry's identifier. */
    public String scope() {
        return batteryType.orElseGet(() -> chemistry.orElseThrow().id());
    }
}
