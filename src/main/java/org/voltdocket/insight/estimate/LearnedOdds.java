package org.voltdocket.insight.estimate;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.voltdocket.kernel.Interval;

/**
 * Odds of several causes, learned: a Dirichlet distribution whose start is the stated odds, worth a number of cases, and to
 * which every audited outcome adds one (conjugate update; A. Gelman and others, Bayesian Data Analysis, section 3.4). The
 * interval of one cause is that of its beta marginal.
 */
public final class LearnedOdds {

    private LearnedOdds() {}

    /**
     * @param odds starting odds, each above 0, adding to 1
     * @param worth how many cases the starting odds are worth, above 0
     * @param counted audited outcomes of each cause, in the order of the odds
     * @return the mean odds after the outcomes with their 95 % intervals
     */
    public static List<Interval> odds(double[] odds, double worth, long[] counted) {
        if (odds.length < 2 || odds.length != counted.length || !(worth > 0)) {
            throw new IllegalArgumentException(
                    "odds and outcomes of the same causes, at least two, and a worth above 0");
        }
        double[] weights = new double[odds.length];
        double all = 0;
        for (int i = 0; i < odds.length; i++) {
            if (!(odds[i] > 0) || counted[i] < 0) {
                throw new IllegalArgumentException("odds above 0 and counts of at least 0");
            }
            weights[i] = odds[i] * worth + counted[i];
            all += weights[i];
        }
        List<Interval> learned = new ArrayList<>();
        for (double weight : weights) {
            BetaDistribution one = new BetaDistribution(weight, all - weight);
            double mean = weight / all;
            learned.add(new Interval(
                    mean,
                    Math.min(mean, one.inverseCumulativeProbability(0.025)),
                    Math.max(mean, one.inverseCumulativeProbability(0.975))));
        }
        return learned;
    }
}
