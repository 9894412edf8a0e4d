package org.voltdocket.worlds;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.worlds.Assessor.Battery;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/** Counts over assessed cases. Each count is a number of cases of a number of cases. */
final class WorldTally {

    /** So many of so many. */
    record Count(long part, long whole) {

        double share() {
            return whole == 0 ? Double.NaN : (double) part / whole;
        }
    }

    private final List<Outcome> outcomes;

    WorldTally(List<Outcome> outcomes) {
        this.outcomes = outcomes;
    }

    private Count count(Predicate<Outcome> of, Predicate<Outcome> what) {
        List<Outcome> whole = outcomes.stream().filter(of).toList();
        return new Count(whole.stream().filter(what).count(), whole.size());
    }

    Count firstCause() {
        return count(o -> true, Outcome::right);
    }

    Count firstCauseObservable() {
        return count(Outcome::observable, Outcome::right);
    }

    /** Cases that count as observable, see {@link Achievable} and {@link Distinguishability}. */
    Count observable() {
        return count(o -> true, Outcome::observable);
    }

    /** Cases that differ from all their twins while weights fitted on the same world do not lead to the true cause. */
    Count notFound() {
        return count(o -> true, o -> o.kind() == Distinguishability.Kind.CLEAR && !o.observable());
    }

    /** Cases of this kind. */
    Count kind(Distinguishability.Kind kind) {
        return count(o -> true, o -> o.kind() == kind);
    }

    /** Statements of more than 95 % that are right. */
    Count firmStatements() {
        return count(o -> o.said().stated() > 0.95, Outcome::right);
    }

    Count healthyBlamed() {
        return count(WorldTally::healthy, o -> leans(o, Leaning.BATTERY_SIDE) || leans(o, Leaning.VEHICLE_SIDE));
    }

    Count batteryFaultsBatterySide() {
        return count(WorldTally::failed, o -> leans(o, Leaning.BATTERY_SIDE));
    }

    /** Of those with a test of the charged battery, or a capacity run, and the rating to compare it with. */
    Count testedBatteryFaultsBatterySide() {
        return count(o -> failed(o) && o.said().tested(), o -> leans(o, Leaning.BATTERY_SIDE));
    }

    Count vehicleFaultsVehicleSide() {
        return count(WorldTally::ofVehicle, o -> leans(o, Leaning.VEHICLE_SIDE));
    }

    Count verdictRight() {
        return count(o -> o.said().battery() != Battery.NOT_JUDGED, o -> failed(o) == saidFailed(o));
    }

    Count judged() {
        return count(o -> true, o -> o.said().battery() != Battery.NOT_JUDGED);
    }

    Count failedCalledSound() {
        return count(WorldTally::failed, o -> o.said().battery() == Battery.SOUND);
    }

    Count goodCalledFailed() {
        return count(o -> !failed(o), WorldTally::saidFailed);
    }

    Count failedVehicleSide() {
        return count(WorldTally::failed, o -> leans(o, Leaning.VEHICLE_SIDE));
    }

    Count unjudgedVehicleSide() {
        return count(o -> o.said().battery() == Battery.NOT_JUDGED, o -> leans(o, Leaning.VEHICLE_SIDE));
    }

    /** Leanings that are right; {@code open} is not counted. */
    Count leaningsRight() {
        return count(o -> !leans(o, Leaning.OPEN), o -> o.said().leaning() == expected(o));
    }

    /** Leanings to a side, or to no fault, that are another one once no fact is missing. */
    Count turned() {
        return count(
                o -> !leans(o, Leaning.OPEN), o -> o.completed() != o.said().leaning());
    }

    Count open() {
        return count(o -> true, o -> leans(o, Leaning.OPEN));
    }

    /** Of a tenth of the stated probability of the first cause: mean stated, and the share that is right. */
    Map<Integer, double[]> calibration() {
        Map<Integer, double[]> tenths = new TreeMap<>();
        for (Outcome o : outcomes) {
            double[] sums = tenths.computeIfAbsent((int) Math.min(9, o.said().stated() * 10), t -> new double[3]);
            sums[0]++;
            sums[1] += o.said().stated();
            sums[2] += o.right() ? 1 : 0;
        }
        return tenths;
    }

    /** Of each estimate: how often its interval holds a true value. */
    Map<String, Count> coverage() {
        Map<String, Count> found = new TreeMap<>();
        for (Outcome o : outcomes) {
            o.said().estimates().forEach((name, interval) -> {
                List<Double> truths = o.truth().estimates().get(name);
                if (truths != null) {
                    boolean held = truths.stream().anyMatch(t -> interval[0] <= t && t <= interval[1]);
                    Count before = found.getOrDefault(name, new Count(0, 0));
                    found.put(name, new Count(before.part() + (held ? 1 : 0), before.whole() + 1));
                }
            });
        }
        return found;
    }

    private static boolean leans(Outcome o, Leaning leaning) {
        return o.said().leaning() == leaning;
    }

    private static boolean healthy(Outcome o) {
        return o.truth().fault().cause() == Cause.NONE;
    }

    private static boolean failed(Outcome o) {
        return o.truth().fault().ofBattery();
    }

    private static boolean saidFailed(Outcome o) {
        return o.said().battery() == Battery.FAILED;
    }

    private static boolean ofVehicle(Outcome o) {
        return expected(o) == Leaning.VEHICLE_SIDE;
    }

    private static Leaning expected(Outcome o) {
        return switch (o.truth().fault().cause()) {
            case BATTERY_DEFECT, BATTERY_WORN -> Leaning.BATTERY_SIDE;
            case CHARGING_SOURCE, CURRENT_SENSOR, CHARGE_CONTROL, WIRING, STANDING_DRAIN -> Leaning.VEHICLE_SIDE;
            case DUTY, MISFIT -> Leaning.USAGE_SIDE;
            case NONE -> Leaning.NO_FAULT_SEEN;
        };
    }
}
