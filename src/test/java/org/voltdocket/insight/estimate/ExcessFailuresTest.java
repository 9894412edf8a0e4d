package org.voltdocket.insight.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExcessFailuresTest {

    /** Lower 95 % limits of a Poisson mean for a count: Garwood, Biometrika 28 (1936), table; the values are from memory. */
    @ParameterizedTest
    @CsvSource({"1, 0.0253", "2, 0.2422", "5, 1.6235", "10, 4.7954", "20, 12.2165", "50, 37.1108"})
    void atTheLowerLimitSoManyOrMoreAreOneInForty(long seen, double limit) {
        assertThat(ExcessFailures.chance(seen, limit)).isCloseTo(0.025, within(2e-5));
    }

    /** A shape of 1 is a constant hazard: the time under risk over the scale, worked by hand. */
    @Test
    void withAConstantHazardTheTimeUnderRiskCounts() {
        Lifetimes.Collector usual = new Lifetimes.Collector();
        for (int age = 1; age <= 400; age++) {
            // ages of an exponential with mean 100, by its quantiles
            usual.failed(-100 * Math.log(1 - (age - 0.5) / 400), 1);
        }
        Weibull fit = Weibull.fit(usual.lives()).orElseThrow();
        Lifetimes group = new Lifetimes.Collector()
                .failed(20, 3)
                .alive(70, 2)
                .alive(100, 1)
                .lives();
        assertThat(ExcessFailures.expected(group, fit)).isCloseTo((3 * 20 + 2 * 70 + 100) / 100.0, within(0.1));
    }

    @Test
    void nothingSeenIsNoExcessAndAnythingWhereNothingIsExpectedIs() {
        assertThat(ExcessFailures.chance(0, 0)).isEqualTo(1);
        assertThat(ExcessFailures.chance(1, 0)).isZero();
    }
}
