package org.voltdocket.insight.estimate;

import java.util.Optional;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.voltdocket.kernel.Interval;

/**
 * Weibull lifetimes by maximum likelihood with censoring on the right (NIST/SEMATECH e-Handbook of Statistical Methods,
 * 8.4.1.3; W. Q. Meeker and L. A. Escobar, Statistical Methods for Reliability Data, 1998, chapter 8). Intervals are normal
 * on the logarithms of both parameters, from the observed information.
 *
 * @param scale age by which 63.2 % have failed, in the unit of the lives
 * @param shape below 1 for early failures, about 1 for random failures, above 1 for wear
 * @param logLikelihood at the best values
 * @param varianceLogScale of the logarithm of the scale
 * @param varianceLogShape of the logarithm of the shape
 * @param covariance of both
 */
public record Weibull(
        Interval scale,
        Interval shape,
        double logLikelihood,
        double varianceLogScale,
        double varianceLogShape,
        double covariance) {

    private static final double LEAST_SHAPE = 0.02;
    private static final double GREATEST_SHAPE = 200;

    /** @return the fit; absent under three failures, and where all failed at one age and nothing outlived it */
    public static Optional<Weibull> fit(Lifetimes lives) {
        if (lives.failed() < 3) {
            return Optional.empty();
        }
        double longest = lives.ages().get(lives.ages().size() - 1).age();
        UnivariateFunction score = shape -> score(lives, longest, shape);
        if (score.value(LEAST_SHAPE) >= 0 || score.value(GREATEST_SHAPE) <= 0) {
            return Optional.empty();
        }
        double shape =
                new BracketingNthOrderBrentSolver(1e-13, 1e-13, 5).solve(500, score, LEAST_SHAPE, GREATEST_SHAPE);
        double logScale =
                StrictMath.log(longest) + StrictMath.log(powers(lives, longest, shape)[0] / lives.failed()) / shape;
        return information(lives, logScale, shape);
    }

    /** Share that has failed by an age (at least 0), 0 to 1. */
    public double failedBy(double age) {
        return -StrictMath.expm1(-hazard(age));
    }

    /** Cumulative hazard at an age (at least 0). */
    public double hazard(double age) {
        return StrictMath.pow(age / scale.value(), shape.value());
    }

    /** Share still alive at an age above 0 with its interval, normal on log(-log S). */
    public Interval survival(double age) {
        double z = shape.value() * StrictMath.log(age / scale.value());
        double variance = shape.value() * shape.value() * varianceLogScale
                + z * z * varianceLogShape
                - 2 * shape.value() * z * covariance;
        double reach = Interval.Z95 * Math.sqrt(Math.max(0, variance));
        double value = StrictMath.exp(-StrictMath.exp(z));
        return new Interval(
                value,
                Math.min(value, StrictMath.exp(-StrictMath.exp(z + reach))),
                Math.max(value, StrictMath.exp(-StrictMath.exp(z - reach))));
    }

    /** Derivative of the profile likelihood by the shape, sign reversed, over the failures; rises with the shape. */
    private static double score(Lifetimes lives, double longest, double shape) {
        double[] sums = powers(lives, longest, shape);
        double logs = 0;
        for (Lifetimes.At at : lives.ages()) {
            logs += at.failed() * StrictMath.log(at.age() / longest);
        }
        return sums[1] / sums[0] - 1 / shape - logs / lives.failed();
    }

    /** Sums over all lives of (age/longest)^shape, and of the same times log(age/longest). */
    private static double[] powers(Lifetimes lives, double longest, double shape) {
        double[] sums = new double[2];
        for (Lifetimes.At at : lives.ages()) {
            double log = StrictMath.log(at.age() / longest);
            double power = (at.failed() + at.alive()) * StrictMath.exp(shape * log);
            sums[0] += power;
            sums[1] += power * log;
        }
        return sums;
    }

    /** Observed information in the logarithms of scale and shape, and what follows from it. */
    private static Optional<Weibull> information(Lifetimes lives, double logScale, double shape) {
        double scaleScale = 0;
        double scaleShape = 0;
        double shapeShape = 0;
        double logLikelihood = 0;
        for (Lifetimes.At at : lives.ages()) {
            double z = shape * (StrictMath.log(at.age()) - logScale);
            double hazard = (at.failed() + at.alive()) * StrictMath.exp(z);
            scaleScale += shape * shape * hazard;
            scaleShape -= shape * hazard * z;
            shapeShape += hazard * (z * z + z) - at.failed() * z;
            logLikelihood += at.failed() * (StrictMath.log(shape) + z - StrictMath.log(at.age())) - hazard;
        }
        double determinant = scaleScale * shapeShape - scaleShape * scaleShape;
        if (!(determinant > 0) || !(scaleScale > 0)) {
            return Optional.empty();
        }
        double varianceScale = shapeShape / determinant;
        double varianceShape = scaleScale / determinant;
        return Optional.of(new Weibull(
                onLogarithm(StrictMath.exp(logScale), varianceScale),
                onLogarithm(shape, varianceShape),
                logLikelihood,
                varianceScale,
                varianceShape,
                -scaleShape / determinant));
    }

    private static Interval onLogarithm(double value, double variance) {
        double reach = StrictMath.exp(Interval.Z95 * Math.sqrt(variance));
        return new Interval(value, value / reach, value * reach);
    }
}
