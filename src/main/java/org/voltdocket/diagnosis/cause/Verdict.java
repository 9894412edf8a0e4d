package org.voltdocket.diagnosis.cause;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** What the evidence says of the battery, and which way the case leans. */
public final class Verdict {

    private Verdict() {}

    /**
     * @param tested whether a battery test was taken
     * @param judged whether one was taken at enough charge
     */
    public static BatteryVerdict battery(
            Rulebook book, List<EvaluatedRule> findings, List<RankedCause> causes, boolean tested, boolean judged) {
        double fails = book.decision(DecisionLimit.TEST_FAILED);
        boolean failed = false;
        boolean passed = false;
        for (EvaluatedRule one : findings) {
            if (one.rule().decides() == Rule.Decides.BATTERY) {
                failed |= one.outside() > fails;
                passed |= one.outside() <= fails;
            }
        }
        double defect = probability(causes, Cause.BATTERY_DEFECT);
        double worn = probability(causes, Cause.BATTERY_WORN);
        if (failed && defect + worn >= book.decision(DecisionLimit.BATTERY_FAULT)) {
            return defect >= worn ? BatteryVerdict.DEFECTIVE : BatteryVerdict.WORN;
        }
        if (tested && !judged) {
            return BatteryVerdict.RECHARGE_AND_REPEAT;
        }
        return passed && !failed ? BatteryVerdict.SOUND : BatteryVerdict.UNDETERMINED;
    }

    /**
     * @param watched whether the charging was seen at all: a drive recording or a charging test
     * @param contradiction whether evidence was found that cannot belong together
     */
    public static Leaning leaning(
            Rulebook book, BatteryVerdict battery, List<RankedCause> causes, boolean watched, boolean contradiction) {
        double leans = book.decision(DecisionLimit.LEANING);
        if (contradiction) {
            return Leaning.CONTRADICTORY;
        }
        double vehicle = 0;
        for (Cause cause : Cause.values()) {
            vehicle += ofVehicle(cause) ? probability(causes, cause) : 0;
        }
        double own = probability(causes, Cause.BATTERY_DEFECT) + probability(causes, Cause.BATTERY_WORN);
        double usage = probability(causes, Cause.DUTY) + probability(causes, Cause.MISFIT);
        double none = probability(causes, Cause.NONE);
        boolean failed = battery == BatteryVerdict.DEFECTIVE || battery == BatteryVerdict.WORN;
        if (failed && own >= leans) {
            return Leaning.BATTERY_SIDE;
        }
        boolean named = ofVehicle(causes.get(0).cause())
                && causes.get(0).probability() >= book.decision(DecisionLimit.FIRST_CAUSE);
        if (named
                && vehicle
                        >= (battery == BatteryVerdict.SOUND && watched
                                ? leans
                                : book.decision(DecisionLimit.LEANING_UNTESTED))) {
            return Leaning.VEHICLE_SIDE;
        }
        if (usage >= leans) {
            return Leaning.USAGE_SIDE;
        }
        boolean seen = battery == BatteryVerdict.SOUND && watched;
        return none >= leans && seen ? Leaning.NO_FAULT_SEEN : Leaning.OPEN;
    }

    private static boolean ofVehicle(Cause cause) {
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
