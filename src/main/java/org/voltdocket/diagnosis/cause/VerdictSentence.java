package org.voltdocket.diagnosis.cause;

import java.util.Locale;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.rulebook.Sentences;

/** Says the decision in one sentence. */
public final class VerdictSentence {

    private VerdictSentence() {}

    /**
     * @param evidence whether the case has any evidence that is read
     */
    public static String of(Rulebook book, CaseDecision decision, boolean evidence) {
        if (!evidence && decision.leaning() == Leaning.OPEN) {
            return Sentences.plain("verdict.no-evidence");
        }
        RankedCause first = decision.causes().get(0);
        boolean vehicleProven = decision.leaning() == Leaning.OPEN
                && decision.battery().verdict() == BatteryVerdict.NOT_JUDGED
                && LeaningDecision.ofVehicle(first.cause())
                && first.probability() >= book.decision(DecisionLimit.FIRST_CAUSE)
                && LeaningDecision.vehicle(decision.causes()) >= book.decision(DecisionLimit.LEANING_VEHICLE);
        String key = vehicleProven
                ? "verdict.open-vehicle"
                : "verdict." + decision.leaning().id();
        return Sentences.plain(key)
                .replace(
                        "{battery}",
                        Sentences.plain("battery." + decision.battery().id()))
                .replace("{cause}", Sentences.plain("cause." + first.cause().id()))
                .replace("{percent}", percent(first.probability()));
    }

    /** Percent, rounded so that no probability below 1 reads as 100. */
    static String percent(double probability) {
        if (probability > 0.999) {
            return "over 99.9";
        }
        return probability >= 0.995
                ? String.format(Locale.ROOT, "%.1f", Math.floor(1000 * probability) / 10)
                : Sentences.number(100 * probability, "%");
    }
}
