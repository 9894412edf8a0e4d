package org.voltdocket.worlds.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.FitCase.Look;

/** A case of the fit with its looks by group and rule. */
final class PreparedCase {

    private static final int CAUSES = Cause.values().length;
    private static final double DECIBANS = 10 / StrictMath.log(10);
    private static final double WHOLE = 0.9995;

    private final double[] odds = new double[CAUSES];
    private final int truth;
    /** Rules by group. */
    private final List<List<Measured>> groups;

    /** A rule with the shares of its sides, one row for each measurement. */
    private record Measured(int rule, List<double[]> looks) {}

    PreparedCase(FitCase one, Rulebook book, Map<String, Integer> index) {
        this.truth = one.cause().ordinal();
        for (Cause cause : Cause.values()) {
            odds[cause.ordinal()] =
                    DECIBANS * StrictMath.log(book.startingOdds().get(cause));
        }
        Map<String, Measured> rules = new LinkedHashMap<>();
        for (Look look : one.looks()) {
            rules.computeIfAbsent(look.rule(), id -> new Measured(index.get(id), new ArrayList<>()))
                    .looks()
                    .add(look.shares());
        }
        Map<String, List<Measured>> byGroup = new LinkedHashMap<>();
        for (Measured measured : rules.values()) {
            Rule rule = book.rules().get(measured.rule());
            byGroup.computeIfAbsent(rule.group(), group -> new ArrayList<>()).add(measured);
        }
        this.groups = List.copyOf(byGroup.values());
    }

    double[] probabilities(double[][][] weight, double[][][] ratios) {
        return probabilities(values(weight, ratios));
    }

    /** Decibans by group, rule and cause. */
    private double[][][] values(double[][][] weight, double[][][] ratios) {
        double[][][] values = new double[groups.size()][][];
        for (int g = 0; g < values.length; g++) {
            values[g] = new double[groups.get(g).size()][CAUSES];
            for (int m = 0; m < values[g].length; m++) {
                for (int c = 0; c < CAUSES; c++) {
                    values[g][m][c] = decibans(groups.get(g).get(m), c, weight, ratios);
                }
            }
        }
        return values;
    }

    private double[] probabilities(double[][][] values) {
        double[] decibans = odds.clone();
        for (double[][] group : values) {
            for (int c = 0; c < CAUSES; c++) {
                double most = 0;
                double least = 0;
                for (double[] rule : group) {
                    most = Math.max(most, rule[c]);
                    least = Math.min(least, rule[c]);
                }
                decibans[c] += most + least;
            }
        }
        return normalised(decibans);
    }

    private static double[] normalised(double[] decibans) {
        double most = Double.NEGATIVE_INFINITY;
        for (double d : decibans) {
            most = Math.max(most, d);
        }
        double[] p = new double[CAUSES];
        double sum = 0;
        for (int c = 0; c < CAUSES; c++) {
            p[c] = StrictMath.exp((decibans[c] - most) / DECIBANS);
            sum += p[c];
        }
        for (int c = 0; c < CAUSES; c++) {
            p[c] /= sum;
        }
        return p;
    }

    private static double decibans(Measured measured, int cause, double[][][] weight, double[][][] ratios) {
        double sum = 0;
        for (double[] shares : measured.looks()) {
            int whole = whole(shares);
            sum += whole >= 0
                    ? weight[measured.rule()][whole][cause]
                    : DECIBANS * Math.log(ratio(shares, ratios[measured.rule()], cause));
        }
        return sum / measured.looks().size();
    }

    private static double ratio(double[] shares, double[][] ratios, int cause) {
        double ratio = 1;
        for (int side = 0; side < shares.length; side++) {
            ratio += shares[side] * (ratios[side][cause] - 1);
        }
        return ratio;
    }

    /** The side that counts whole; -1 if none does. */
    private static int whole(double[] shares) {
        for (int side = 0; side < shares.length; side++) {
            if (shares[side] > WHOLE) {
                return side;
            }
        }
        return -1;
    }

    /** Adds the slope of the negative log likelihood of the true cause to that of each weight, per deciban over NATS. */
    void addSlope(double[][][] weight, double[][][] ratios, double[][][] slope) {
        double[][][] values = values(weight, ratios);
        double[] p = probabilities(values);
        p[truth] -= 1;
        for (int g = 0; g < values.length; g++) {
            for (int c = 0; c < CAUSES; c++) {
                int most = 0;
                int least = 0;
                for (int m = 1; m < values[g].length; m++) {
                    most = values[g][m][c] > values[g][most][c] ? m : most;
                    least = values[g][m][c] < values[g][least][c] ? m : least;
                }
                if (values[g][most][c] >= 0) {
                    add(groups.get(g).get(most), c, p[c], ratios, slope);
                }
                if (values[g][least][c] < 0) {
                    add(groups.get(g).get(least), c, p[c], ratios, slope);
                }
            }
        }
    }

    private static void add(Measured measured, int cause, double error, double[][][] ratios, double[][][] slope) {
        double part = error / measured.looks().size();
        for (double[] shares : measured.looks()) {
            double ratio = ratio(shares, ratios[measured.rule()], cause);
            for (int side = 0; side < shares.length; side++) {
                slope[measured.rule()][side][cause] +=
                        part * shares[side] * ratios[measured.rule()][side][cause] / ratio;
            }
        }
    }
}
