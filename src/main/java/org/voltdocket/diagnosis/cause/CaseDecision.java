package org.voltdocket.diagnosis.cause;

import java.util.List;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;

/**
 * What follows from the measurements of a case, given its facts.
 *
 * @param rules evaluated rules in the order of the rule book
 * @param causes all causes, most probable first
 * @param likelihood of the findings, averaged over the causes, relative to cases that no rule tells anything of
 */
public record CaseDecision(
        List<EvaluatedRule> rules,
        List<RankedCause> causes,
        double likelihood,
        BatteryReason battery,
        Leaning leaning) {

    /** Whether the leaning names a side or clears both. */
    public boolean firm() {
        return leaning != Leaning.OPEN && leaning != Leaning.CONTRADICTORY;
    }

    /** Whether another decision has the same leaning and the same verdict on the battery. */
    boolean agreesWith(CaseDecision other) {
        return leaning == other.leaning && battery.verdict() == other.battery.verdict();
    }

    boolean sameFirstCause(CaseDecision other) {
        return causes.get(0).cause() == other.causes().get(0).cause();
    }

    /** The same with an open leaning, because a missing fact can change it. */
    CaseDecision open(boolean batteryDepends) {
        boolean judged = battery.verdict() != BatteryVerdict.NOT_JUDGED;
        BatteryReason reason = batteryDepends && judged ? BatteryReason.FACTS_MISSING : battery;
        return new CaseDecision(rules, causes, likelihood, reason, Leaning.OPEN);
    }
}
