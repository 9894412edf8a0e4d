package org.voltdocket.insight.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.Interval;

class EstimatesTest {

    @Test
    void nothingFailedIsNoCurveAndNoFit() {
        Lifetimes lives = new Lifetimes.Collector().alive(3, 5).lives();
        assertThat(KaplanMeier.of(lives).steps()).isEmpty();
        assertThat(KaplanMeier.of(lives).at(9)).isEqualTo(1);
        assertThat(Weibull.fit(lives)).isEmpty();
    }

    @Test
    void allFailedAtOneAgeIsNoFit() {
        assertThat(Weibull.fit(new Lifetimes.Collector().failed(3, 5).lives())).isEmpty();
    }

    @Test
    void whenTheLastOneFailsNobodyIsAlive() {
        KaplanMeier curve = KaplanMeier.of(
                new Lifetimes.Collector().failed(1, 1).failed(2, 1).lives());
        assertThat(curve.steps().get(1).survival()).isEqualTo(Interval.exact(0));
    }

    @Test
    void ordersOfCollectingAndUnitsOfAgeDoNotMatter() {
        Lifetimes days = new Lifetimes.Collector()
                .alive(400, 7)
                .failed(30, 1)
                .failed(90, 2)
                .failed(365, 1)
                .lives();
        Lifetimes years = new Lifetimes.Collector()
                .failed(365 / 365.0, 1)
                .failed(90 / 365.0, 1)
                .failed(30 / 365.0, 1)
                .failed(90 / 365.0, 1)
                .alive(400 / 365.0, 7)
                .lives();
        Weibull a = Weibull.fit(days).orElseThrow();
        Weibull b = Weibull.fit(years).orElseThrow();
        assertThat(b.shape().value()).isCloseTo(a.shape().value(), within(1e-9));
        assertThat(b.scale().value() * 365).isCloseTo(a.scale().value(), within(1e-6));
        assertThat(b.shape().high()).isCloseTo(a.shape().high(), within(1e-8));
    }

    @Test
    void anAgeOfNothingIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Lifetimes.Collector().failed(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new Lifetimes.Collector().alive(1, -1));
    }

    /** Funnel limits close in as groups grow and lie around the target. */
    @Test
    void aFunnelNarrows() {
        Funnel funnel = new Funnel(0.3);
        double before = 1;
        for (int size : new int[] {5, 20, 80, 320, 1280}) {
            double width = funnel.high(size, Funnel.WARNING) - funnel.low(size, Funnel.WARNING);
            assertThat(width).isLessThanOrEqualTo(before);
            assertThat(funnel.low(size, Funnel.ALARM)).isLessThanOrEqualTo(funnel.low(size, Funnel.WARNING));
            assertThat(funnel.high(size, Funnel.ALARM)).isGreaterThanOrEqualTo(funnel.high(size, Funnel.WARNING));
            before = width;
        }
        assertThat(before).as("1.96 * 2 * sqrt(0.3 * 0.7 / 1280)").isCloseTo(0.0502, within(0.002));
        assertThat(funnel.place(new Proportion(3, 4))).isEqualTo(Funnel.Place.INSIDE);
        assertThat(funnel.place(new Proportion(300, 400))).isEqualTo(Funnel.Place.FAR_HIGH);
        assertThat(funnel.place(new Proportion(10, 400))).isEqualTo(Funnel.Place.FAR_LOW);
    }

    /** Nothing counted: the starting odds. Much counted: the counts. */
    @Test
    void oddsMoveFromStartToCounts() {
        double[] odds = {0.6, 0.4};
        assertThat(LearnedOdds.odds(odds, 10, new long[2]).get(0).value()).isCloseTo(0.6, within(1e-12));
        assertThat(LearnedOdds.odds(odds, 10, new long[] {5, 15}).get(0).value())
                .isCloseTo(11.0 / 30, within(1e-12));
        Interval much = LearnedOdds.odds(odds, 10, new long[] {1000, 9000}).get(0);
        assertThat(much.low()).isBetween(0.09, 0.1);
        assertThat(much.high()).isBetween(0.1, 0.11);
    }

    /** Worked by hand: stated 0.8 and right, stated 0.6 and wrong. */
    @Test
    void scoresByHand() {
        Calibration two = Calibration.of(List.of(
                new Calibration.Case(new double[] {0.8, 0.2}, 0), new Calibration.Case(new double[] {0.6, 0.4}, 1)));
        assertThat(two.brierFirst()).isCloseTo((0.04 + 0.36) / 2, within(1e-12));
        assertThat(two.brierAll()).isCloseTo((0.08 + 0.72) / 2, within(1e-12));
        assertThat(two.logScore()).isCloseTo(-(Math.log(0.8) + Math.log(0.4)) / 2, within(1e-12));
        assertThat(two.bins().get(8).came()).isEqualTo(new Proportion(1, 1));
        assertThat(two.bins().get(6).came()).isEqualTo(new Proportion(0, 1));
        assertThat(two.bins()).hasSize(10);
    }
}
