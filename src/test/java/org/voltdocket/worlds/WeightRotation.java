package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.worlds.WorldEvaluation.Outcome;

/**
 * Fits the weights of evidence on all worlds but one and evaluates them on the one left out, in rotation, for each set of
 * channels. The penalty is chosen among the worlds that are fitted. It reports only; no rule book is changed.
 */
final class WeightRotation {

    private static final double[] PENALTIES = {3, 10, 30, 100};

    private final StringBuilder page = new StringBuilder();

    private WeightRotation() {}

    static String of(List<Outcome> outcomes) {
        WeightRotation rotation = new WeightRotation();
        List<String> worlds =
                outcomes.stream().map(o -> o.truth().world()).distinct().toList();
        List<Channels> sets =
                outcomes.stream().map(Outcome::channels).distinct().toList();
        rotation.line("");
        rotation.line("## Weights fitted on the other worlds");
        rotation.line("");
        rotation.line(
                "| left out | channels | penalty | right before | after | observable before | after | log loss before"
                        + " | after | healthy not none before | after |");
        rotation.line("|---|---|---|---|---|---|---|---|---|---|---|");
        List<String> largest = new ArrayList<>();
        for (Channels set : sets) {
            List<Outcome> all =
                    outcomes.stream().filter(o -> o.channels() == set).toList();
            for (String world : worlds) {
                rotation.row(set, world, without(all, world), only(all, world));
            }
            double penalty = rotation.penalty(all, worlds);
            WeightFit.on(all, penalty).largest(20).forEach(row -> largest.add("| " + set.id + " | " + row + " |"));
        }
        rotation.line("");
        rotation.line("Largest corrections, fitted on all worlds:");
        rotation.line("");
        rotation.line("| channels | finding | cause | decibans | cases |");
        rotation.line("|---|---|---|---|---|");
        largest.forEach(rotation::line);
        return rotation.page.toString();
    }

    private void row(Channels set, String world, List<Outcome> others, List<Outcome> left) {
        List<String> names =
                others.stream().map(o -> o.truth().world()).distinct().toList();
        double penalty = penalty(others, names);
        WeightFit fit = WeightFit.on(others, penalty);
        List<Outcome> clear = left.stream().filter(Outcome::observable).toList();
        List<Outcome> healthy = left.stream()
                .filter(o -> o.truth().fault().cause() == Cause.NONE)
                .toList();
        line(String.format(
                Locale.ROOT,
                "| %s | %s | %.0f | %.1f | %.1f | %.1f | %.1f | %.3f | %.3f | %.1f | %.1f |",
                world,
                set.id,
                penalty,
                100 * right(left, null),
                100 * right(left, fit),
                100 * right(clear, null),
                100 * right(clear, fit),
                loss(left, null),
                loss(left, fit),
                100 - 100 * right(healthy, null),
                100 - 100 * right(healthy, fit)));
    }

    /** The penalty of the least log loss when each of these worlds is left out in turn. */
    private double penalty(List<Outcome> outcomes, List<String> worlds) {
        double best = PENALTIES[PENALTIES.length - 1];
        double least = Double.POSITIVE_INFINITY;
        for (double penalty : PENALTIES) {
            double loss = 0;
            for (String world : worlds) {
                List<Outcome> others = without(outcomes, world);
                loss += others.isEmpty() ? 0 : loss(only(outcomes, world), WeightFit.on(others, penalty));
            }
            if (loss < least) {
                least = loss;
                best = penalty;
            }
        }
        return best;
    }

    private static List<Outcome> only(List<Outcome> outcomes, String world) {
        return outcomes.stream().filter(o -> o.truth().world().equals(world)).toList();
    }

    private static List<Outcome> without(List<Outcome> outcomes, String world) {
        return outcomes.stream().filter(o -> !o.truth().world().equals(world)).toList();
    }

    private static double[] probabilities(Outcome o, WeightFit fit) {
        if (fit != null) {
            return fit.probabilities(o.said());
        }
        double[] p = new double[Cause.values().length];
        o.said().probabilities().forEach((cause, value) -> p[cause.ordinal()] = value);
        return p;
    }

    private static double right(List<Outcome> outcomes, WeightFit fit) {
        int right = 0;
        for (Outcome o : outcomes) {
            double[] p = probabilities(o, fit);
            int first = 0;
            for (int c = 1; c < p.length; c++) {
                first = p[c] > p[first] ? c : first;
            }
            right += first == o.truth().fault().cause().ordinal() ? 1 : 0;
        }
        return (double) right / outcomes.size();
    }

    private static double loss(List<Outcome> outcomes, WeightFit fit) {
        double sum = 0;
        for (Outcome o : outcomes) {
            sum -= StrictMath.log(Math.max(
                    1e-9, probabilities(o, fit)[o.truth().fault().cause().ordinal()]));
        }
        return sum / outcomes.size();
    }

    private void line(String text) {
        page.append(text).append('\n');
    }
}
