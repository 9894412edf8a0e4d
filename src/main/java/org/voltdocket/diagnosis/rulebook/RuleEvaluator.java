package org.voltdocket.diagnosis.rulebook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.quantity.Measurement;

/** Evaluates the rules of a rule book for the measurements of a case. */
public final class RuleEvaluator {

    private RuleEvaluator() {}

    /**
     * @return in the order of the rule book, then by evidence
     */
    public static List<EvaluatedRule> evaluate(Rulebook book, Facts facts, List<Measurement> measurements) {
        Chemistry chemistry = facts.battery().chemistry();
        ChargingControl control = facts.vehicle().chargingControl();
        Map<String, List<Measurement>> byQuantity = measurements.stream()
                .sorted(Comparator.comparing(
                        m -> m.evidence() == null ? "" : m.evidence().sha256().hex()))
                .collect(Collectors.groupingBy(Measurement::quantity));
        List<EvaluatedRule> out = new ArrayList<>();
        for (Rule rule : book.rules()) {
            if (rule.appliesTo(control)) {
                byQuantity
                        .getOrDefault(rule.quantity(), List.of())
                        .forEach(m -> out.add(EvaluatedRule.of(rule, m, chemistry)));
            }
        }
        return List.copyOf(out);
    }
}
