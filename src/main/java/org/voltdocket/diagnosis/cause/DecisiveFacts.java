package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.voltdocket.diagnosis.Facts;

/**
 * Finds missing facts that can change the decision: each is set to plausible values in turn, and the case is decided again.
 *
 * @param decision the decision, with an open leaning where a missing fact can change it
 * @param missing names of those facts, most important first
 */
public record DecisiveFacts(CaseDecision decision, List<String> missing) {

    /**
     * @param variants plausible facts by the name of the missing fact, see {@link PlausibleFacts}
     * @param decide decides the case given other facts
     */
    public static DecisiveFacts of(
            CaseDecision base, Map<String, List<Facts>> variants, Function<Facts, CaseDecision> decide) {
        List<String> missing = new ArrayList<>();
        boolean batteryDepends = false;
        for (Map.Entry<String, List<Facts>> fact : variants.entrySet()) {
            boolean decisive = false;
            for (Facts plausible : fact.getValue()) {
                CaseDecision other = decide.apply(plausible);
                boolean otherVerdict =
                        other.battery().verdict() != base.battery().verdict();
                decisive |= base.firm() ? !other.agreesWith(base) : other.firm() || otherVerdict;
                batteryDepends |= otherVerdict;
            }
            if (decisive) {
                missing.add(fact.getKey());
            }
        }
        boolean opens = base.firm() && !missing.isEmpty();
        return new DecisiveFacts(opens ? base.open(batteryDepends) : base, List.copyOf(missing));
    }
}
