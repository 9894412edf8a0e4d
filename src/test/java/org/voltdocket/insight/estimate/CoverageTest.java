package org.voltdocket.insight.estimate;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.kernel.Interval;

/** On 10 000 drawn samples each, the stated 95 % intervals hold the truth about 95 times in a hundred. */
class CoverageTest {

    private static final int SAMPLES = 10_000;

    private final SplittableRandom random = new SplittableRandom(20260101);

    /** The score interval wavers with the share; over shares its mean cover is close to 95 % (Newcombe 1998). */
    @ParameterizedTest
    @CsvSource({"30", "200"})
    void score(int of) {
        int held = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double p = 0.02 + 0.96 * random.nextDouble();
            held += holds(new Proportion(drawn(of, p), of).interval(), p);
        }
        assertThat(held).isBetween(9400, 9650);
    }

    @ParameterizedTest
    @CsvSource({"0.7", "1", "2.5"})
    void weibull(double shape) {
        int scale = 0;
        int form = 0;
        int survival = 0;
        int fits = 0;
        double truth = StrictMath.exp(-StrictMath.pow(0.5, shape));
        for (int i = 0; i < SAMPLES; i++) {
            Optional<Weibull> fit = Weibull.fit(lives(80, shape, 0.9));
            if (fit.isPresent()) {
                fits++;
                scale += holds(fit.get().scale(), 1);
                form += holds(fit.get().shape(), shape);
                survival += holds(fit.get().survival(0.5), truth);
            }
        }
        assertThat(fits).isEqualTo(SAMPLES);
        assertThat(scale).isBetween(9350, 9650);
        assertThat(form).isBetween(9350, 9650);
        assertThat(survival).isBetween(9350, 9650);
    }

    @Test
    void kaplanMeier() {
        int held = 0;
        double truth = StrictMath.exp(-StrictMath.pow(0.6, 1.5));
        for (int i = 0; i < SAMPLES; i++) {
            KaplanMeier curve = KaplanMeier.of(lives(80, 1.5, 1.2));
            Interval at = Interval.exact(1);
            for (KaplanMeier.Step step : curve.steps()) {
                at = step.age() <= 0.6 ? step.survival() : at;
            }
            held += holds(at, truth);
        }
        assertThat(held).isBetween(9350, 9650);
    }

    /** Fitted on half of the years, counted in the next: the interval for the count holds it. */
    @Test
    void forecast() {
        int held = 0;
        for (int i = 0; i < SAMPLES; i++) {
            Lifetimes.Collector known = new Lifetimes.Collector();
            int later = 0;
            for (int k = 0; k < 300; k++) {
                double age = life(1.6);
                double since = 0.1 + 0.5 * random.nextDouble();
                if (age <= since) {
                    known.failed(age, 1);
                } else {
                    known.alive(since, 1);
                    later += age <= since + 0.2 ? 1 : 0;
                }
            }
            Lifetimes lives = known.lives();
            held += holds(Forecast.of(Weibull.fit(lives).orElseThrow(), lives, 0.2), later);
        }
        assertThat(held).as("ends are rounded outwards").isBetween(9450, 9850);
    }

    /** Of groups that differ by chance alone, at most one in twenty lies outside the inner limits, one in 500 the outer. */
    @Test
    void funnel() {
        Funnel funnel = new Funnel(0.5);
        int warned = 0;
        int alarmed = 0;
        for (int i = 0; i < SAMPLES; i++) {
            int size = 10 + random.nextInt(190);
            Funnel.Place place = funnel.place(new Proportion(drawn(size, 0.5), size));
            warned += place == Funnel.Place.INSIDE ? 0 : 1;
            alarmed += place == Funnel.Place.FAR_HIGH || place == Funnel.Place.FAR_LOW ? 1 : 0;
        }
        assertThat(warned).isBetween(250, 500);
        assertThat(alarmed).isBetween(3, 25);
    }

    /** Where the truth is drawn from the starting odds, the learned interval holds it (a Bayesian interval's own promise). */
    @Test
    void learned() {
        double[] odds = {0.5, 0.3, 0.2};
        int held = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double[] truth = new double[3];
            double sum = 0;
            for (int k = 0; k < 3; k++) {
                truth[k] = gamma(odds[k] * 20);
                sum += truth[k];
            }
            long[] counted = new long[3];
            for (int n = 0; n < 40; n++) {
                double u = random.nextDouble() * sum;
                counted[u < truth[0] ? 0 : u < truth[0] + truth[1] ? 1 : 2]++;
            }
            held += holds(LearnedOdds.odds(odds, 20, counted).get(0), truth[0] / sum);
        }
        assertThat(held).isBetween(9400, 9600);
    }

    /** Whole shapes only: the sum of as many exponential draws. */
    private double gamma(double shape) {
        double sum = 0;
        for (int i = 0; i < Math.round(shape); i++) {
            sum -= StrictMath.log(1 - random.nextDouble());
        }
        return sum;
    }

    /** Weibull lives of scale 1, last seen at the given age. */
    private Lifetimes lives(int count, double shape, double seen) {
        Lifetimes.Collector collector = new Lifetimes.Collector();
        for (int i = 0; i < count; i++) {
            double age = life(shape);
            if (age <= seen) {
                collector.failed(age, 1);
            } else {
                collector.alive(seen, 1);
            }
        }
        return collector.lives();
    }

    private double life(double shape) {
        return StrictMath.pow(-StrictMath.log(1 - random.nextDouble()), 1 / shape);
    }

    private int drawn(int of, double p) {
        int count = 0;
        for (int i = 0; i < of; i++) {
            count += random.nextDouble() < p ? 1 : 0;
        }
        return count;
    }

    private static int holds(Interval interval, double truth) {
        return interval.low() <= truth && truth <= interval.high() ? 1 : 0;
    }
}
