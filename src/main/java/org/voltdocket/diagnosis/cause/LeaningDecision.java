package org.voltdocket.diagnosis.cause;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Decides which side a case leans to. */
public final class LeaningDecision {

    private LeaningDecision() {}

    /**
     * @param chargingSeen whether the evidence has a drive recording or a charging test
     * @param contradiction whether evidence was found that cannot belong together
     */
    public static Leaning of(
            Rulebook book,
            BatteryVerdict battery,
            List<RankedCause> causes,
            boolean chargingSeen,
            boolean contradiction) {
        if (contradiction) {
            return Leaning.CONTRADICTORY;
        }
        double limit = book.decision(DecisionLimit.LEANING);
        double own = probability(causes, Cause.BATTERY_DEFECT) + probability(causes, Cause.BATTERY_WORN);
        if (battery == BatteryVerdict.FAILED && own >= book.decision(DecisionLimit.BATTERY_FAULT)) {
            return Leaning.BATTERY_SIDE;
        }
        if (battery != BatteryVerdict.SOUND) {
            return usage(causes) >= limit && battery == BatteryVerdict.NOT_JUDGED ? Leaning.USAGE_SIDE : Leaning.OPEN;
        }
        boolean named = ofVehicle(causes.get(0).cause())
                && causes.get(0).probability() >= book.decision(DecisionLimit.FIRST_CAUSE);
        double vehicleLimit =
                book.decision(chargingSeen ? DecisionLimit.LEANING_VEHICLE : DecisionLimit.LEANING_UNTESTED);
        if (named && vehicle(causes) >= vehicleLimit) {
            return Leaning.VEHICLE_SIDE;
        }
        if (usage(causes) >= limit) {
            return Leaning.USAGE_SIDE;
        }
        return probability(causes, Cause.NONE) >= limit && chargingSeen ? Leaning.NO_FAULT_SEEN : Leaning.OPEN;
    }

    private static double usage(List<RankedCause> causes) {
        return probability(causes, Cause.DUTY) + probability(causes, Cause.MISFIT);
    }

    /** Probability of a fault of the vehicle. */
    static double vehicle(List<RankedCause> causes) {
        return causes.stream()
                .filter(c -> ofVehicle(c.cause()))
                .mapToDouble(RankedCause::probability)
                .sum();
    }

    static boolean ofVehicle(Cause cause) {
        return switch (cause) {
            case CHARGING_SOURCE, CURRENT_SENSOR, CHARGE_CONTROL, WIRING, STANDING_DRAIN -> true;
            case BATTERY_DEFECT, BATTERY_WORN, DUTY, MISFIT, NONE -> false;
        };
    }

    static double probability(List<RankedCause> causes, Cause cause) {
        return causes.stream()
                .filter(c -> c.cause() == cause)
                .mapToDouble(RankedCause::probability)
                .sum();
    }
}
