package org.voltdocket.insight.estimate;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.kernel.Interval;

/**
 * The share still alive by age, nothing assumed of its shape (E. L. Kaplan and P. Meier, 1958, Journal of the American
 * Statistical Association 53, 457-481). Standard error by Greenwood's formula; the interval from it on the scale
 * log(-log S), which stays between 0 and 1 (J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time
 * Data, 1980).
 *
 * @param steps one for each age at which anything failed, rising
 */
public record KaplanMeier(List<Step> steps) {

    /**
     * From this age on.
     *
     * @param age in the unit of the lives
     * @param atRisk how many were alive just before
     * @param failed how many failed at it
     * @param survival share still alive with its 95 % interval, 0 to 1
     * @param standardError by Greenwood, on the scale of the share
     */
    public record Step(double age, long atRisk, long failed, Interval survival, double standardError) {}

    public KaplanMeier {
        steps = List.copyOf(steps);
    }

    public static KaplanMeier of(Lifetimes lives) {
        List<Step> steps = new ArrayList<>();
        long atRisk = lives.watched();
        double survival = 1;
        double sum = 0;
        for (Lifetimes.At at : lives.ages()) {
            if (at.failed() > 0) {
                survival *= 1 - (double) at.failed() / atRisk;
                sum += at.failed() == atRisk ? 0 : (double) at.failed() / ((double) atRisk * (atRisk - at.failed()));
                steps.add(new Step(at.age(), atRisk, at.failed(), interval(survival, sum), survival * Math.sqrt(sum)));
            }
            atRisk -= at.failed() + at.alive();
        }
        return new KaplanMeier(steps);
    }

    /** Share still alive at an age, 1 before the first failure. */
    public double at(double age) {
        double survival = 1;
        for (Step step : steps) {
            if (step.age() > age) {
                break;
            }
            survival = step.survival().value();
        }
        return survival;
    }

    private static Interval interval(double survival, double sum) {
        if (survival <= 0 || survival >= 1) {
            return Interval.exact(survival);
        }
        double log = StrictMath.log(survival);
        double reach = StrictMath.exp(Interval.Z95 * Math.sqrt(sum) / Math.abs(log));
        return new Interval(survival, StrictMath.exp(log * reach), StrictMath.exp(log / reach));
    }
}
