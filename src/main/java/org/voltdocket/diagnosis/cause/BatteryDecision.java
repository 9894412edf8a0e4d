package org.voltdocket.diagnosis.cause;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Decides the verdict on the battery from the rules that test it and from the probabilities of the causes. */
public final class BatteryDecision {

    /**
     * What is known of the battery tests of a case.
     *
     * @param tested whether a battery test was made
     * @param charged whether one was made at sufficient charge
     * @param unrated whether a cranking current was measured at sufficient charge and no rating is known for it
     * @param conflict whether tests of the battery contradict each other
     */
    public record Tests(boolean tested, boolean charged, boolean unrated, boolean conflict) {}

    private BatteryDecision() {}

    /** The reason, which determines the verdict. */
    public static BatteryReason of(Rulebook book, List<EvaluatedRule> rules, List<RankedCause> causes, Tests tests) {
        if (tests.conflict()) {
            return BatteryReason.CONFLICT;
        }
        double limit = book.decision(DecisionLimit.TEST_FAILED);
        boolean failed = false;
        boolean passed = false;
        for (EvaluatedRule rule : rules) {
            boolean outside = rule.outside() > limit;
            failed |= outside && rule.rule().decides().failsBattery();
            passed |= !outside && rule.rule().decides() == Rule.Decides.BATTERY;
        }
        if (failed) {
            return failure(book, causes);
        }
        if (passed) {
            return BatteryReason.TESTED_CHARGED;
        }
        if (tests.unrated()) {
            return BatteryReason.FACTS_MISSING;
        }
        return tests.tested() && !tests.charged() ? BatteryReason.TOO_DISCHARGED : BatteryReason.NO_TEST;
    }

    private static BatteryReason failure(Rulebook book, List<RankedCause> causes) {
        double defect = LeaningDecision.probability(causes, Cause.BATTERY_DEFECT);
        double wear = LeaningDecision.probability(causes, Cause.BATTERY_WORN);
        double known = book.decision(DecisionLimit.KIND_KNOWN) * (defect + wear);
        if (defect + wear < book.decision(DecisionLimit.BATTERY_FAULT)) {
            return BatteryReason.CONFLICT;
        }
        return defect >= known ? BatteryReason.DEFECT : wear >= known ? BatteryReason.WEAR : BatteryReason.KIND_OPEN;
    }
}
