package org.voltdocket.casefile.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.voltdocket.diagnosis.Facts;

/** Facts as requests and answers carry them; what is not known is absent. */
public final class FactViews {

    private FactViews() {}

    @Schema(name = "BatteryFacts", description = "Battery details.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({
        "chemistry",
        "capacityAh",
        "ratedCrankingA",
        "crankingStandard",
        "producedOn",
        "soldOn",
        "fittedOn",
        "fittedOdometerKm"
    })
    public record Battery(
            @Schema(allowableValues = {"flooded", "efb", "agm", "gel"})
            String chemistry,

            @Schema(description = "nominal 20 h capacity, Ah", minimum = "1", maximum = "400", example = "70")
            BigDecimal capacityAh,

            @Schema(description = "rated cold cranking current, A", minimum = "20", maximum = "3000", example = "700")
            BigDecimal ratedCrankingA,

            @Schema(allowableValues = {"EN", "SAE", "IEC", "DIN", "JIS"})
            String crankingStandard,

            LocalDate producedOn,
            LocalDate soldOn,
            LocalDate fittedOn,

            @Schema(description = "odometer when fitted, km", minimum = "0", maximum = "3000000")
            BigDecimal fittedOdometerKm) {

        public static Battery of(Facts.BatteryFacts facts) {
            return new Battery(
                    facts.chemistry() == null ? null : facts.chemistry().id(),
                    number(facts.capacityAh()),
                    number(facts.ratedCrankingA()),
                    facts.crankingStandard() == null
                            ? null
                            : facts.crankingStandard().id(),
                    facts.producedOn(),
                    facts.soldOn(),
                    facts.fittedOn(),
                    number(facts.fittedOdometerKm()));
        }
    }

    @Schema(name = "VehicleFacts", description = "Vehicle details.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"chargingControl", "stopStart", "requiredChemistry", "requiredCapacityAh", "odometerKm"})
    public record Vehicle(
            @Schema(allowableValues = {"conventional", "managed", "unknown"})
            String chargingControl,

            Boolean stopStart,

            @Schema(allowableValues = {"flooded", "efb", "agm", "gel"})
            String requiredChemistry,

            @Schema(description = "required capacity, Ah", minimum = "1", maximum = "400")
            BigDecimal requiredCapacityAh,

            @Schema(description = "odometer now, km", minimum = "0", maximum = "3000000")
            BigDecimal odometerKm) {

        public static Vehicle of(Facts.VehicleFacts facts) {
            return new Vehicle(
                    facts.chargingControl() == null
                            ? null
                            : facts.chargingControl().id(),
                    facts.stopStart(),
                    facts.requiredChemistry() == null
                            ? null
                            : facts.requiredChemistry().id(),
                    number(facts.requiredCapacityAh()),
                    number(facts.odometerKm()));
        }
    }

    @Schema(
            name = "CaseRequest",
            description = "A case to open, or to find and complete. Only the two keys are required.")
    public record Request(
            @Schema(
                    requiredMode = Schema.RequiredMode.REQUIRED,
                    description = "4 to 40 of A-Z 0-9 - . /; spaces removed, upper case",
                    example = "KX4-2291-077")
            String batterySerial,

            @Schema(
                    requiredMode = Schema.RequiredMode.REQUIRED,
                    description = "17 characters without I, O, Q (ISO 3779); spaces and hyphens removed, upper case",
                    example = "1M8GDM9AXKP042788")
            String vin,

            Battery battery,
            Vehicle vehicle,

            @Schema(maxLength = 4000, description = "what the customer says")
            String complaint,

            @Schema(minimum = "0", maximum = "20", description = "batteries already replaced for this complaint")
            Integer batteriesReplacedBefore) {}

    @Schema(name = "CasePatch", description = "JSON Merge Patch (RFC 7396) of the facts: null removes. Keys stay.")
    public record Patch(Battery battery, Vehicle vehicle, String complaint, Integer batteriesReplacedBefore) {}

    /** A number as it was told: no exponent, no idle zeros. */
    private static BigDecimal number(Double value) {
        if (value == null) {
            return null;
        }
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return exact.scale() < 0 ? exact.setScale(0) : exact;
    }
}
