package org.voltdocket.diagnosis;

import java.time.LocalDate;

/**
 * Facts of a case besides its evidence. Every component may be null: not known.
 *
 * @param complaint the customer's complaint
 * @param batteriesReplacedBefore batteries already replaced in this vehicle for this complaint, 0 to 20
 */
public record Facts(BatteryFacts battery, VehicleFacts vehicle, String complaint, Integer batteriesReplacedBefore) {

    public Facts {
        battery = battery == null ? BatteryFacts.UNKNOWN : battery;
        vehicle = vehicle == null ? VehicleFacts.UNKNOWN : vehicle;
    }

    /** Nothing known. */
    public static final Facts UNKNOWN = new Facts(null, null, null, null);

    /**
     * Battery details.
     *
     * @param capacityAh nominal 20 h capacity, Ah, 1 to 400
     * @param ratedCrankingA rated cold cranking current, A, 20 to 3000, by {@code crankingStandard}
     * @param fittedOdometerKm odometer when fitted, km
     */
    public record BatteryFacts(
            Chemistry chemistry,
            Double capacityAh,
            Double ratedCrankingA,
            CrankingStandard crankingStandard,
            LocalDate producedOn,
            LocalDate soldOn,
            LocalDate fittedOn,
            Double fittedOdometerKm) {

        /** Nothing known. */
        public static final BatteryFacts UNKNOWN = new BatteryFacts(null, null, null, null, null, null, null, null);
    }

    /**
     * Vehicle details.
     *
     * @param requiredCapacityAh required capacity, Ah, 1 to 400
     * @param odometerKm odometer now, km
     */
    public record VehicleFacts(
            ChargingControl chargingControl,
            Boolean stopStart,
            Chemistry requiredChemistry,
            Double requiredCapacityAh,
            Double odometerKm) {

        /** Nothing known. */
        public static final VehicleFacts UNKNOWN = new VehicleFacts(null, null, null, null, null);
    }
}
