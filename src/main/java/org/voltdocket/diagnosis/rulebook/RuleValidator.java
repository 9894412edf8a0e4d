package org.voltdocket.diagnosis.rulebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

/** Validates the rules of an edition: each has its sentences, and its examples give the results they state. */
public final class RuleValidator {

    private RuleValidator() {}

    /**
     * An error in a rule.
     *
     * @param row its index, from 0
     * @param member where in the row, such as {@code examples[2].result}
     */
    public record Flaw(int row, String member, String why) {}

    /** All errors, in the order of the rules; empty if there are none. */
    public static List<Flaw> of(Rulebook book) {
        List<Flaw> flaws = new ArrayList<>();
        for (int i = 0; i < book.rules().size(); i++) {
            Rule rule = book.rules().get(i);
            if (sentences(flaws, i, rule)) {
                examples(flaws, i, rule);
            }
        }
        return List.copyOf(flaws);
    }

    private static boolean sentences(List<Flaw> flaws, int row, Rule rule) {
        List<String> sides = new ArrayList<>(List.of("inside"));
        rule.low().ifPresent(limit -> sides.add("below"));
        rule.high().ifPresent(limit -> sides.add("above"));
        List<String> mute = sides.stream()
                .filter(side -> !Sentences.has("finding." + rule.id() + "." + side))
                .toList();
        mute.forEach(side -> flaws.add(new Flaw(
                row,
                "id",
                "this server has no sentence for '" + rule.id() + "' " + side + ". It needs a later program.")));
        return mute.isEmpty();
    }

    private static void examples(List<Flaw> flaws, int row, Rule rule) {
        for (int k = 0; k < rule.examples().size(); k++) {
            Rule.Example example = rule.examples().get(k);
            String result = result(rule, example);
            if (!result.equals(example.result())) {
                flaws.add(new Flaw(
                        row,
                        "examples[" + k + "].result",
                        "the limits make " + example.value() + " " + result + ", not " + example.result() + "."));
            }
        }
    }

    /** On which side of the row's limits an exact value lies. */
    private static String result(Rule rule, Rule.Example example) {
        ChargingControl control = rule.control().isEmpty()
                ? ChargingControl.CONVENTIONAL
                : rule.control().get(0);
        Facts facts = new Facts(null, new Facts.VehicleFacts(control, null, null, null, null), null, null);
        Measurement exact = new Measurement(rule.quantity(), null, Interval.exact(example.value()), example.celsius());
        Rulebook alone = new Rulebook("one row", null, Map.of(), "", List.of(rule));
        EvaluatedRule judged =
                RuleEvaluator.evaluate(alone, facts, List.of(exact)).get(0);
        if (judged.finding().result() == Result.INSIDE) {
            return "inside";
        }
        double low = rule.low().map(l -> l.at(example.celsius(), null)).orElse(Double.NEGATIVE_INFINITY);
        return example.value() < low ? "below" : "above";
    }
}
