package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Ranks the causes by probability: prior times likelihood ratios, added as decibans (I. J. Good, 1950: 10·log10 of the
 * likelihood ratio). The rules of one group depend on one physical fact, so for each cause only the strongest rule for it
 * and the strongest rule against it count; several measurements of one rule count as their mean.
 */
public final class CauseRanking {

    private CauseRanking() {}

    /** All causes, most probable first; equal ones in the order of {@link Cause}. */
    public static List<RankedCause> of(Rulebook book, List<EvaluatedRule> judged) {
        Map<Cause, List<Weight>> weights = new LinkedHashMap<>();
        double[] odds = new double[Cause.values().length];
        double sum = 0;
        Collection<List<EvaluatedRule>> byRule = byRule(judged);
        for (Cause cause : Cause.values()) {
            List<Weight> given = given(cause, byRule);
            double decibans = 0;
            for (Weight weight : given) {
                decibans += weight.decibans();
            }
            odds[cause.ordinal()] = book.startingOdds().get(cause) * StrictMath.pow(10, decibans / 10);
            sum += odds[cause.ordinal()];
            weights.put(cause, given);
        }
        List<RankedCause> out = new ArrayList<>();
        for (Cause cause : Cause.values()) {
            out.add(new RankedCause(cause, odds[cause.ordinal()] / sum, weights.get(cause)));
        }
        out.sort(Comparator.comparingDouble(RankedCause::probability).reversed());
        return List.copyOf(out);
    }

    /** Likelihood of the findings, averaged over the causes, relative to that of cases in which no rule tells anything. */
    public static double likelihood(Rulebook book, List<RankedCause> ranked) {
        RankedCause first = ranked.get(0);
        double decibans = sum(first.weights());
        return book.startingOdds().get(first.cause()) * StrictMath.pow(10, decibans / 10) / first.probability();
    }

    private static Collection<List<EvaluatedRule>> byRule(List<EvaluatedRule> judged) {
        Map<String, List<EvaluatedRule>> out = new LinkedHashMap<>();
        for (EvaluatedRule one : judged) {
            out.computeIfAbsent(one.rule().id(), id -> new ArrayList<>()).add(one);
        }
        return out.values();
    }

    /** Of each group the strongest rule for the cause and the strongest rule against it. */
    private static List<Weight> given(Cause cause, Collection<List<EvaluatedRule>> byRule) {
        Map<String, List<Weight>> strongest = new LinkedHashMap<>();
        for (List<EvaluatedRule> looks : byRule) {
            List<Weight> weights = averaged(cause, looks);
            double sum = sum(weights);
            if (sum != 0) {
                String place = looks.get(0).rule().group() + (sum > 0 ? "+" : "-");
                strongest.merge(place, weights, (a, b) -> Math.abs(sum(b)) > Math.abs(sum(a)) ? b : a);
            }
        }
        List<Weight> out = new ArrayList<>();
        strongest.values().forEach(out::addAll);
        out.sort(
                Comparator.comparingDouble((Weight w) -> Math.abs(w.decibans())).reversed());
        return List.copyOf(out);
    }

    /** Several measurements of one rule count as their mean. */
    private static List<Weight> averaged(Cause cause, List<EvaluatedRule> looks) {
        List<Weight> out = new ArrayList<>();
        for (EvaluatedRule one : looks) {
            Double decibans = one.decibans().get(cause);
            if (decibans != null) {
                out.add(new Weight(one.finding().id(), decibans / looks.size()));
            }
        }
        return out;
    }

    private static double sum(List<Weight> weights) {
        double sum = 0;
        for (Weight weight : weights) {
            sum += weight.decibans();
        }
        return sum;
    }
}
