package org.voltdocket.insight.estimate;

import org.hipparchus.distribution.continuous.GammaDistribution;
import org.voltdocket.kernel.Interval;

/**
 * How many of the things now alive will fail within a horizon, by a Weibull fit: the expected number, and an interval for
 * the number that will be counted. Its variance is the binomial one plus that of the fitted parameters (delta method; W. Q.
 * Meeker and L. A. Escobar, Statistical Methods for Reliability Data, 1998, chapter 12); the interval is that of a gamma
 * distribution with this mean and variance, ends rounded outwards. Things sold later are not in it.
 */
public final class Forecast {

    private Forecast() {}

    /**
     * @param lives whose {@code alive} are the things in service, by their age now
     * @param horizon in the unit of the ages, above 0
     */
    public static Interval of(Weibull fit, Lifetimes lives, double horizon) {
        if (!(horizon > 0)) {
            throw new IllegalArgumentException("a horizon above 0, not " + horizon);
        }
        double mean = 0;
        double chance = 0;
        double byScale = 0;
        double byShape = 0;
        double shape = fit.shape().value();
        for (Lifetimes.At at : lives.ages()) {
            double now = fit.hazard(at.age());
            double then = fit.hazard(at.age() + horizon);
            double survives = StrictMath.exp(now - then);
            mean += at.alive() * (1 - survives);
            chance += at.alive() * survives * (1 - survives);
            double zNow = shape * StrictMath.log(at.age() / fit.scale().value());
            double zThen =
                    shape * StrictMath.log((at.age() + horizon) / fit.scale().value());
            byScale -= at.alive() * survives * shape * (then - now);
            byShape += at.alive() * survives * (then * zThen - now * zNow);
        }
        double variance = chance
                + byScale * byScale * fit.varianceLogScale()
                + byShape * byShape * fit.varianceLogShape()
                + 2 * byScale * byShape * fit.covariance();
        return interval(mean, variance);
    }

    private static Interval interval(double mean, double variance) {
        if (!(mean > 0) || !(variance > 0)) {
            return Interval.exact(Math.max(0, mean));
        }
        GammaDistribution counted = new GammaDistribution(mean * mean / variance, variance / mean);
        double low = Math.floor(counted.inverseCumulativeProbability(0.025));
        double high = Math.ceil(counted.inverseCumulativeProbability(0.975));
        return new Interval(mean, Math.min(low, mean), Math.max(high, mean));
    }
}
