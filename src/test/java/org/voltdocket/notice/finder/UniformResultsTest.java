package org.voltdocket.notice.finder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Compares the interval with published values and the p-value with the binomial distribution computed by hand. */
class UniformResultsTest {

    @Test
    void theScoreIntervalEqualsPublishedValues() {
        // 81 of 263 and 15 of 148: Newcombe, Statistics in Medicine 17 (1998), method 3 (score method)
        assertThat(UniformResults.wilsonBound(81, 263, -1)).isCloseTo(0.2553, within(5e-5));
        assertThat(UniformResults.wilsonBound(81, 263, 1)).isCloseTo(0.3662, within(5e-5));
        assertThat(UniformResults.wilsonBound(15, 148, -1)).isCloseTo(0.0624, within(5e-5));
        assertThat(UniformResults.wilsonBound(15, 148, 1)).isCloseTo(0.1605, within(5e-5));
    }

    @Test
    void neverFailingIsSignificantOnlyIfOthersFail() {
        // others fail 81 of 263, at least 0.2553: none of 30 has the p-value (1 - 0.2553)^30 = 1.4e-4
        UniformResults.Result odd = UniformResults.test(30, 0, 263, 81, 10).orElseThrow();
        assertThat(odd.neverFails()).isTrue();
        assertThat(odd.pValue()).isCloseTo(Math.pow(1 - 0.2553, 30), within(1e-6));
        // with 100 workshops the corrected level is 5e-5
        assertThat(UniformResults.test(30, 0, 263, 81, 100)).isEmpty();
        // others fail 15 of 148, at least 0.0624: the p-value is 0.145
        assertThat(UniformResults.test(30, 0, 148, 15, 1)).isEmpty();
    }

    @Test
    void alwaysFailingIsSignificantOnlyIfOthersDoNot() {
        assertThat(UniformResults.test(20, 20, 263, 81, 10).orElseThrow().neverFails())
                .isFalse();
        // if nearly all of the others fail, all of 20 is not significant
        assertThat(UniformResults.test(20, 20, 263, 250, 10)).isEmpty();
    }

    @Test
    void smallSamplesAndMixedResultsAreNotSignificant() {
        assertThat(UniformResults.test(19, 0, 1000, 900, 1)).isEmpty();
        assertThat(UniformResults.test(30, 0, 99, 90, 1)).isEmpty();
        assertThat(UniformResults.test(30, 1, 1000, 900, 1)).isEmpty();
        assertThat(UniformResults.test(30, 29, 1000, 10, 1)).isEmpty();
    }
}
