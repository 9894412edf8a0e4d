package org.voltdocket.worlds.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.FitCase.Look;

/**
 * Reads off how much of each side of each rule counts in a case. The case is assessed by a rule book in which every rule is a
 * group of its own and three causes each have a weight on one side only; what these causes receive gives the shares.
 */
public final class WeightProbe {

    private static final double DECIBANS = 30;
    private static final double RATIO = StrictMath.pow(10, DECIBANS / 10);
    private static final Cause[] SIDES = {Cause.BATTERY_DEFECT, Cause.BATTERY_WORN, Cause.CHARGING_SOURCE};

    private final Rulebook probe;

    public WeightProbe(Rulebook book) {
        this.probe = ReweightedRules.of(book, WeightProbe::probing);
    }

    private static Rule probing(Rule rule) {
        Map<Cause, Double> none = Map.of();
        return ReweightedRules.of(
                rule,
                rule.id(),
                rule.low().isPresent() ? Map.of(SIDES[0], DECIBANS) : none,
                Map.of(SIDES[1], DECIBANS),
                rule.high().isPresent() ? Map.of(SIDES[2], DECIBANS) : none);
    }

    /** The looks of a case, by rule and finding. */
    public List<Look> looks(CaseInput input) {
        Assessment said = Diagnosis.assess(input, probe);
        Map<String, String> rules = new HashMap<>();
        Map<String, Integer> counts = new HashMap<>();
        Map<String, double[]> shares = new TreeMap<>();
        said.findings().stream().filter(f -> f.limit() != null).forEach(f -> {
            rules.put(f.id(), f.rule());
            counts.merge(f.rule(), 1, Integer::sum);
            shares.put(f.id(), new double[SIDES.length]);
        });
        for (RankedCause cause : said.causes()) {
            for (int side = 0; side < SIDES.length; side++) {
                for (Weight weight : cause.cause() == SIDES[side] ? cause.weights() : List.<Weight>of()) {
                    double decibans = weight.decibans() * counts.get(rules.get(weight.finding()));
                    shares.get(weight.finding())[side] = (StrictMath.pow(10, decibans / 10) - 1) / (RATIO - 1);
                }
            }
        }
        List<Look> looks = new ArrayList<>();
        shares.forEach((finding, s) -> looks.add(new Look(rules.get(finding), s[0], s[1], s[2])));
        return looks;
    }
}
