package org.voltdocket.diagnosis.cause;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
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

/**
 * Distributions of the facts that a case lacks, as a few values each with its share. All of them are common practice for
 * passenger cars; the shares are ours.
 */
public final class PlausibleFacts {

    /**
     * Facts with one missing fact filled in.
     *
     * @param share how often the value occurs in cases whose cause has nothing to do with the fact
     */
    public record Plausible(Facts facts, double share) {}

    /** Name of the kind of charging control: its limits differ, so that no likelihoods of two kinds are compared. */
    static final String CONTROL = "vehicle.chargingControl";

    /** Name of the rated cranking current. */
    static final String RATING = "battery.ratedCrankingA";

    private static final double RATED_A_PER_AH = 8.8;
    private static final double RATED_A = 600;
    /** Standard deviation of the logarithm of the rating, with and without the capacity. */
    private static final double SPREAD_OF_SIZE = 0.09;

    private static final double SPREAD_OF_ALL = 0.28;
    /** Points of the normal distribution and their shares. */
    private static final double[] POINTS = {-2, -1.15, -0.55, 0, 0.55, 1.15, 2};

    private static final double[] SHARES = {0.05, 0.15, 0.2, 0.2, 0.2, 0.15, 0.05};

    private static final double LARGER = 1.35;
    /** Share of batteries of the wrong type or size where something else is the cause. */
    private static final double SELDOM = 0.002;

    private static final int YEAR_DAYS = 365;
    private static final int[] AGES = {1, 3, 6};
    private static final double SHORT_TRIPS_KM = 5;
    private static final double USUAL_KM = 40;
    /** Share of vehicles that drive so little where something else is the cause. */
    private static final double SHORT_TRIPS = 0.07;

    private final Facts facts;
    private final BatteryFacts battery;
    private final VehicleFacts vehicle;
    private final Map<String, List<Plausible>> out = new LinkedHashMap<>();

    private PlausibleFacts(Facts facts) {
        this.facts = facts;
        this.battery = facts.battery();
        this.vehicle = facts.vehicle();
    }

    /**
     * The missing facts by name, most important first. The shares of a fact add to 1.
     *
     * @param day day of the newest evidence; null where no evidence has a date
     */
    public static Map<String, List<Plausible>> of(CaseInput input, LocalDate day) {
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

    private void charging() {
        if (vehicle.chargingControl() == null || vehicle.chargingControl() == ChargingControl.UNKNOWN) {
            out.put(
                    CONTROL,
                    List.of(
                            plausible(vehicle.controlled(ChargingControl.CONVENTIONAL), 0.5),
                            plausible(vehicle.controlled(ChargingControl.MANAGED), 0.5)));
        }
    }

    private void rating() {
        Double capacity = battery.capacityAh();
        if (battery.ratedCrankingA() == null) {
            double usual = capacity == null ? RATED_A : RATED_A_PER_AH * capacity;
            double spread = capacity == null ? SPREAD_OF_ALL : SPREAD_OF_SIZE;
            CrankingStandard by = battery.crankingStandard() == null ? CrankingStandard.EN : battery.crankingStandard();
            List<Plausible> ratings = new ArrayList<>();
            for (int i = 0; i < POINTS.length; i++) {
                double amperes = usual * StrictMath.exp(spread * POINTS[i]);
                ratings.add(plausible(battery.rated(amperes, by), SHARES[i]));
            }
            out.put(RATING, List.copyOf(ratings));
        } else if (battery.crankingStandard() == null) {
            double amperes = battery.ratedCrankingA();
            out.put(
                    "battery.crankingStandard",
                    List.of(
                            plausible(battery.rated(amperes, CrankingStandard.EN), 0.7),
                            plausible(battery.rated(amperes, CrankingStandard.SAE), 0.3)));
        }
    }

    /** Type and size: a battery below what the vehicle needs is plausible while one of the two is not known. */
    private void fit() {
        Chemistry fitted = battery.chemistry();
        Chemistry required = vehicle.requiredChemistry();
        boolean needsMore =
                required != null && required != Chemistry.FLOODED || Boolean.TRUE.equals(vehicle.stopStart());
        Double has = battery.capacityAh();
        Double needs = vehicle.requiredCapacityAh();
        if (fitted == null && needsMore) {
            seldom(
                    "battery.chemistry",
                    facts.with(battery.of(Chemistry.FLOODED, has), vehicle),
                    facts.with(battery.of(Chemistry.AGM, has), vehicle));
        } else if (fitted != null && required == null && vehicle.stopStart() == null && fitted != Chemistry.AGM) {
            seldom(
                    "vehicle.requiredChemistry",
                    facts.with(battery, vehicle.requiring(Chemistry.AGM, needs)),
                    facts.with(battery, vehicle.requiring(fitted, needs)));
        }
        if (has == null && needs != null) {
            seldom(
                    "battery.capacityAh",
                    facts.with(battery.of(fitted, needs / LARGER), vehicle),
                    facts.with(battery.of(fitted, needs), vehicle));
        } else if (has != null && needs == null) {
            seldom(
                    "vehicle.requiredCapacityAh",
                    facts.with(battery, vehicle.requiring(required, has * LARGER)),
                    facts.with(battery, vehicle.requiring(required, has)));
        }
    }

    private void seldom(String name, Facts wrong, Facts right) {
        out.put(name, List.of(new Plausible(wrong, SELDOM), new Plausible(right, 1 - SELDOM)));
    }

    private void age(LocalDate day) {
        if (battery.producedOn() == null && battery.soldOn() == null && battery.fittedOn() == null) {
            List<Plausible> ages = new ArrayList<>();
            for (int years : AGES) {
                BatteryFacts dated =
                        battery.dated(day.minusDays((long) years * YEAR_DAYS), null, battery.fittedOdometerKm());
                ages.add(plausible(dated, 1.0 / AGES.length));
            }
            out.put("battery.producedOn", List.copyOf(ages));
        }
    }

    private void distance(LocalDate day) {
        boolean known =
                battery.fittedOn() != null && battery.fittedOdometerKm() != null && vehicle.odometerKm() != null;
        if (!known) {
            out.put(
                    "vehicle.odometerKm",
                    List.of(driven(day, SHORT_TRIPS_KM, SHORT_TRIPS), driven(day, USUAL_KM, 1 - SHORT_TRIPS)));
        }
    }

    private Plausible driven(LocalDate day, double kmADay, double share) {
        LocalDate fitted = battery.fittedOn() == null || !battery.fittedOn().isBefore(day.minusDays(30))
                ? day.minusDays(YEAR_DAYS)
                : battery.fittedOn();
        double then = battery.fittedOdometerKm() == null ? 0 : battery.fittedOdometerKm();
        double now = then + kmADay * ChronoUnit.DAYS.between(fitted, day);
        return new Plausible(facts.with(battery.dated(battery.producedOn(), fitted, then), vehicle.driven(now)), share);
    }

    private Plausible plausible(BatteryFacts other, double share) {
        return new Plausible(facts.with(other, vehicle), share);
    }

    private Plausible plausible(VehicleFacts other, double share) {
        return new Plausible(facts.with(battery, other), share);
    }
}
