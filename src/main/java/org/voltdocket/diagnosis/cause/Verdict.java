package org.voltdocket.diagnosis.cause;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;

/** What the evidence says of the battery, and which way the case leans. */
public final class Verdict {

    /** A side must be this probable to lean to it (ours). */
    private static final double LEANS = 0.60;
    /** The same where nothing judged the battery or nothing watched the charging (ours). */
    private static final double LEANS_UNTESTED = 0.85;

    /**
     * A test fails the battery from this probability that the true value lies outside (ours); it is low because a value
     * outside is held to be rare beforehand.
     */
    private static final double FAILS = 0.30;

    /** Many small suspicions blame no vehicle: the first cause must be one of it, and this probable (ours). */
    private static final double NAMED = 0.40;

    private Verdict() {}

    /**
     * @param tested whether a battery test was taken
     * @param judged whether one was taken at enough charge
     */
    public static BatteryVerdict battery(
            List<EvaluatedRule> findings, List<RankedCause> causes, boolean tested, boolean judged) {
        boolean failed = false;
        boolean passed = false;
        for (EvaluatedRule one : findings) {
            if (one.rule().decides() == Rule.Decides.BATTERY) {
                failed |= one.outside() > FAILS;
                passed |= one.outside() <= FAILS;
            }
        }
        double defect = probability(causes, Cause.BATTERY_DEFECT);
        double worn = probability(causes, Cause.BATTERY_WORN);
        if (failed && defect + worn >= 0.5) {
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
            BatteryVerdict battery, List<RankedCause> causes, boolean watched, boolean contradiction) {
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
        if (failed && own >= LEANS) {
            return Leaning.BATTERY_SIDE;
        }
        boolean named = ofVehicle(causes.get(0).cause()) && causes.get(0).probability() >= NAMED;
        if (named && vehicle >= (battery == BatteryVerdict.SOUND && watched ? LEANS : LEANS_UNTESTED)) {
            return Leaning.VEHICLE_SIDE;
        }
        if (usage >= LEANS) {
            return Leaning.USAGE_SIDE;
        }
        boolean seen = battery == BatteryVerdict.SOUND && watched;
        return none >= LEANS && seen ? Leaning.NO_FAULT_SEEN : Leaning.OPEN;
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
