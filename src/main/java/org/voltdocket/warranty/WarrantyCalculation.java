package org.voltdocket.warranty;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * The amount due for a claim by the terms in force on the day of sale, and its derivation. Unknown values are absent. It is
 * information for the person who decides.
 *
 * @param standing {@code free}, {@code pro-rata}, {@code outside}, {@code no-terms} or {@code unknown}
 */
@Schema(name = "WarrantySum")
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record WarrantyCalculation(
        @Schema(allowableValues = {"free", "pro-rata", "outside", "no-terms", "unknown"})
        String standing,

        @Schema(allowableValues = {"private", "commercial", "taxi"})
        String useClass,

        @Schema(description = "the day from which the term runs")
        LocalDate startsOn,

        @Schema(
                allowableValues = {"sold", "fitted"},
                description = "fitted where the day of sale is not known")
        String startsFrom,

        @Schema(description = "day the claim was handed in; today for a draft")
        LocalDate claimedOn,

        @Schema(description = "whole months of life") Integer months,

        @Schema(description = "days after the whole months") Integer days,

        @Schema(description = "month of life, from 1") Integer month,

        @Schema(description = "driven since fitting, km") Integer drivenKm,

        TermsView terms,

        @Schema(description = "what is paid, 0 to 100") BigDecimal percent,

        @Schema(description = "in the claim's currency, rounded half up to its least unit", example = "64.95")
        String due,

        Outside outside,

        @Schema(description = "the same in sentences, one step each")
        List<String> said) {

    /** The terms that were applied. */
    @Schema(name = "WarrantyTermsApplied")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record TermsView(
            UUID id,
            String batteryType,
            String chemistry,
            LocalDate validFrom,
            int freeMonths,
            List<ProRata> proRata,
            Integer mileageKm) {

        static TermsView of(WarrantyTermsEntry terms) {
            return new TermsView(
                    terms.id(),
                    terms.batteryType().orElse(null),
                    terms.chemistry().map(chemistry -> chemistry.id()).orElse(null),
                    terms.validFrom(),
                    terms.freeMonths(),
                    terms.proRata(),
                    terms.mileageKm().orElse(null));
        }
    }

    /** By how much a claim is outside the term: time, kilometres, or both. */
    @Schema(name = "WarrantyOutside")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Outside(
            @Schema(description = "last day of the term") LocalDate endedOn,
            Integer months,
            Integer days,
            Integer km) {}

    /** Whether the terms give an amount. */
    public boolean hasAmount() {
        return due != null;
    }
}
