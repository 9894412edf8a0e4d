package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Judged;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Causes by probability: starting odds times the weight of evidence, in decibans (I. J. Good, 1950: 10·log10 of the
 * likelihood ratio). Findings of one group rest on one fact, so for each cause only the strongest one that speaks for it
 * and the strongest one against it count.
 */
public final class Ranking {

    private Ranking() {}

    /** All causes, most probable first; equal ones in the order of {@link Cause}. */
    public static List<RankedCause> of(Rulebook book, List<Judged> judged) {
        Map<Cause, List<Weight>> weights = new LinkedHashMap<>();
        double[] odds = new double[Cause.values().length];
        double sum = 0;
        for (Cause cause : Cause.values()) {
            List<Weight> given = given(cause, judged);
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

    private static List<Weight> given(Cause cause, List<Judged> judged) {
        Map<String, Weight> strongest = new LinkedHashMap<>();
        for (Judged one : judged) {
            Double decibans = one.decibans().get(cause);
            if (decibans == null) {
                continue;
            }
            String place = one.rule().group() + (decibans > 0 ? "+" : "-");
            Weight before = strongest.get(place);
            if (before == null || Math.abs(decibans) > Math.abs(before.decibans())) {
                strongest.put(place, new Weight(one.finding().id(), decibans));
            }
        }
        List<Weight> out = new ArrayList<>(strongest.values());
        out.sort(
                Comparator.comparingDouble((Weight w) -> Math.abs(w.decibans())).reversed());
        return List.copyOf(out);
    }
}
