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

    /** The same with another battery and vehicle. */
    public Facts with(BatteryFacts other, VehicleFacts otherVehicle) {
        return new Facts(other, otherVehicle, complaint, batteriesReplacedBefore);
    }

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

        /** The same with another construction and capacity. */
        public BatteryFacts of(Chemistry other, Double ampereHours) {
            return new BatteryFacts(
                    other,
                    ampereHours,
                    ratedCrankingA,
                    crankingStandard,
                    producedOn,
                    soldOn,
                    fittedOn,
                    fittedOdometerKm);
        }

        /** The same with another rating. */
        public BatteryFacts rated(Double amperes, CrankingStandard standard) {
            return new BatteryFacts(
                    chemistry, capacityAh, amperes, standard, producedOn, soldOn, fittedOn, fittedOdometerKm);
        }

        /** The same, produced and fitted on other days; either may be null. */
        public BatteryFacts dated(LocalDate produced, LocalDate fitted, Double odometerKm) {
            return new BatteryFacts(
                    chemistry, capacityAh, ratedCrankingA, crankingStandard, produced, soldOn, fitted, odometerKm);
        }
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

        /** The same with another charging control. */
        public VehicleFacts controlled(ChargingControl control) {
            return new VehicleFacts(control, stopStart, requiredChemistry, requiredCapacityAh, odometerKm);
        }

        /** The same that needs another battery. */
        public VehicleFacts requiring(Chemistry chemistry, Double ampereHours) {
            return new VehicleFacts(chargingControl, stopStart, chemistry, ampereHours, odometerKm);
        }

        /** The same with another odometer reading. */
        public VehicleFacts driven(double kilometres) {
            return new VehicleFacts(chargingControl, stopStart, requiredChemistry, requiredCapacityAh, kilometres);
        }
    }
}
