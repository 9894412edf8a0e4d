package org.voltdocket.diagnosis.cause;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.diagnosis.Facts.VehicleFacts;

/** Plausible values of the facts that a case lacks; all ranges are common practice for passenger cars. */
public final class PlausibleFacts {

    private static final double RATED_A_PER_AH = 8.8;
    private static final double RATED_A = 600;
    private static final double RATED_SPREAD = 0.2;
    private static final double LARGER = 1.35;
    private static final int YEAR_DAYS = 365;
    private static final double SHORT_TRIPS_KM = 5;
    private static final double USUAL_KM = 40;

    private final Facts facts;
    private final BatteryFacts battery;
    private final VehicleFacts vehicle;
    private final Map<String, List<Facts>> out = new LinkedHashMap<>();

    private PlausibleFacts(Facts facts) {
        this.facts = facts;
        this.battery = facts.battery();
        this.vehicle = facts.vehicle();
    }

    /**
     * Facts of the case with one missing fact filled in, by the name of that fact, most important fact first.
     *
     * @param day day of the newest evidence; null where no evidence has a date
     */
    public static Map<String, List<Facts>> of(CaseInput input, LocalDate day) {
        PlausibleFacts all = new PlausibleFacts(input.facts());
        boolean cranked = input.evidence().stream()
                .anyMatch(e -> e.reading() instanceof BatteryTest test && test.crankingCurrentA() != null);
        if (cranked) {
            all.rating();
        }
        all.fit();
        all.charging();
        if (day != null) {
            all.age(day);
            all.distance(day);
        }
        return all.out;
    }

    private void rating() {
        Double capacity = battery.capacityAh();
        double usual = capacity == null ? RATED_A : RATED_A_PER_AH * capacity;
        if (battery.ratedCrankingA() == null) {
            out.put(
                    "battery.ratedCrankingA",
                    List.of(
                            rated(usual * (1 - RATED_SPREAD), CrankingStandard.EN),
                            rated(usual * (1 + RATED_SPREAD), CrankingStandard.EN)));
        } else if (battery.crankingStandard() == null) {
            out.put(
                    "battery.crankingStandard",
                    List.of(
                            rated(battery.ratedCrankingA(), CrankingStandard.EN),
                            rated(battery.ratedCrankingA(), CrankingStandard.SAE)));
        }
    }

    /** Type and size: a battery below what the vehicle needs is plausible while one of the two is not known. */
    private void fit() {
        Chemistry fitted = battery.chemistry();
        Chemistry required = vehicle.requiredChemistry();
        boolean needsMore =
                required != null && required != Chemistry.FLOODED || Boolean.TRUE.equals(vehicle.stopStart());
        if (fitted == null) {
            out.put(
                    "battery.chemistry",
                    needsMore
                            ? List.of(chemistry(Chemistry.FLOODED), chemistry(Chemistry.AGM))
                            : List.of(chemistry(Chemistry.AGM)));
        } else if (required == null && vehicle.stopStart() == null && fitted != Chemistry.AGM) {
            out.put("vehicle.requiredChemistry", List.of(required(fitted, null), required(Chemistry.AGM, null)));
        }
        Double has = battery.capacityAh();
        Double needs = vehicle.requiredCapacityAh();
        if (has == null && needs != null) {
            out.put("battery.capacityAh", List.of(capacity(needs), capacity(needs / LARGER)));
        } else if (has != null && needs == null) {
            out.put("vehicle.requiredCapacityAh", List.of(required(required, has), required(required, has * LARGER)));
        }
    }

    private void charging() {
        ChargingControl control = vehicle.chargingControl();
        if (control == null || control == ChargingControl.UNKNOWN) {
            out.put(
                    "vehicle.chargingControl",
                    List.of(control(ChargingControl.CONVENTIONAL), control(ChargingControl.MANAGED)));
        }
    }

    private void age(LocalDate day) {
        if (battery.producedOn() == null && battery.soldOn() == null && battery.fittedOn() == null) {
            out.put(
                    "battery.producedOn",
                    List.of(produced(day.minusDays(YEAR_DAYS)), produced(day.minusDays(6L * YEAR_DAYS))));
        }
    }

    private void distance(LocalDate day) {
        boolean known =
                battery.fittedOn() != null && battery.fittedOdometerKm() != null && vehicle.odometerKm() != null;
        if (!known) {
            out.put("vehicle.odometerKm", List.of(driven(day, SHORT_TRIPS_KM), driven(day, USUAL_KM)));
        }
    }

    private Facts with(BatteryFacts b, VehicleFacts v) {
        return new Facts(b, v, facts.complaint(), facts.batteriesReplacedBefore());
    }

    private Facts rated(double amperes, CrankingStandard standard) {
        CrankingStandard by = battery.crankingStandard() == null ? standard : battery.crankingStandard();
        return with(
                new BatteryFacts(
                        battery.chemistry(),
                        battery.capacityAh(),
                        amperes,
                        by,
                        battery.producedOn(),
                        battery.soldOn(),
                        battery.fittedOn(),
                        battery.fittedOdometerKm()),
                vehicle);
    }

    private Facts chemistry(Chemistry chemistry) {
        return with(
                new BatteryFacts(
                        chemistry,
                        battery.capacityAh(),
                        battery.ratedCrankingA(),
                        battery.crankingStandard(),
                        battery.producedOn(),
                        battery.soldOn(),
                        battery.fittedOn(),
                        battery.fittedOdometerKm()),
                vehicle);
    }

    private Facts capacity(double ampereHours) {
        return with(
                new BatteryFacts(
                        battery.chemistry(),
                        ampereHours,
                        battery.ratedCrankingA(),
                        battery.crankingStandard(),
                        battery.producedOn(),
                        battery.soldOn(),
                        battery.fittedOn(),
                        battery.fittedOdometerKm()),
                vehicle);
    }

    private Facts produced(LocalDate on) {
        return with(
                new BatteryFacts(
                        battery.chemistry(),
                        battery.capacityAh(),
                        battery.ratedCrankingA(),
                        battery.crankingStandard(),
                        on,
                        null,
                        null,
                        battery.fittedOdometerKm()),
                vehicle);
    }

    private Facts driven(LocalDate day, double kmADay) {
        LocalDate fitted = battery.fittedOn() == null || !battery.fittedOn().isBefore(day.minusDays(30))
                ? day.minusDays(YEAR_DAYS)
                : battery.fittedOn();
        double then = battery.fittedOdometerKm() == null ? 0 : battery.fittedOdometerKm();
        double days = java.time.temporal.ChronoUnit.DAYS.between(fitted, day);
        return with(
                new BatteryFacts(
                        battery.chemistry(),
                        battery.capacityAh(),
                        battery.ratedCrankingA(),
                        battery.crankingStandard(),
                        battery.producedOn(),
                        battery.soldOn(),
                        fitted,
                        then),
                new VehicleFacts(
                        vehicle.chargingControl(),
                        vehicle.stopStart(),
                        vehicle.requiredChemistry(),
                        vehicle.requiredCapacityAh(),
                        then + kmADay * days));
    }

    private Facts required(Chemistry chemistry, Double ampereHours) {
        return with(
                battery,
                new VehicleFacts(
                        vehicle.chargingControl(),
                        vehicle.stopStart(),
                        chemistry,
                        ampereHours == null ? vehicle.requiredCapacityAh() : ampereHours,
                        vehicle.odometerKm()));
    }

    private Facts control(ChargingControl control) {
        return with(
                battery,
                new VehicleFacts(
                        control,
                        vehicle.stopStart(),
                        vehicle.requiredChemistry(),
                        vehicle.requiredCapacityAh(),
                        vehicle.odometerKm()));
    }
}
