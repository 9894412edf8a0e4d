package org.voltdocket.notice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The interval against published values, the decision against the binomial law worked by hand. */
class OneSidedResultTestTest {

    @Test
    void wilsonsIntervalIsThePublishedOne() {
        // 81 of 263 and 15 of 148: Newcombe, Statistics in Medicine 17 (1998), method 3 (score method)
        assertThat(OneSidedResultTest.wilson(81, 263, -1)).isCloseTo(0.2553, within(5e-5));
        assertThat(OneSidedResultTest.wilson(81, 263, 1)).isCloseTo(0.3662, within(5e-5));
        assertThat(OneSidedResultTest.wilson(15, 148, -1)).isCloseTo(0.0624, within(5e-5));
        assertThat(OneSidedResultTest.wilson(15, 148, 1)).isCloseTo(0.1605, within(5e-5));
    }

    @Test
    void aWorkshopThatNeverFailsIsOddOnlyWhereOthersDo() {
        // others fail 81 of 263, at least 0.2553: none of 30 by chance in (1 - 0.2553)^30 = 1.4e-4 of the cases
        OneSidedResultTest.Result odd =
                OneSidedResultTest.judge(30, 0, 263, 81, 10).orElseThrow();
        assertThat(odd.never()).isTrue();
        assertThat(odd.probability()).isCloseTo(Math.pow(1 - 0.2553, 30), within(1e-6));
        // with 100 workshops looked at, one in 7000 is to be expected now and then
        assertThat(OneSidedResultTest.judge(30, 0, 263, 81, 100)).isEmpty();
        // others fail 15 of 148, maybe 0.0624 only: none of 30 happens by chance one time in seven
        assertThat(OneSidedResultTest.judge(30, 0, 148, 15, 1)).isEmpty();
    }

    @Test
    void aWorkshopThatAlwaysFailsIsOddOnlyWhereOthersDoNot() {
        assertThat(OneSidedResultTest.judge(20, 20, 263, 81, 10).orElseThrow().never())
                .isFalse();
        // where nearly all of the others fail, all of 20 prove nothing
        assertThat(OneSidedResultTest.judge(20, 20, 263, 250, 10)).isEmpty();
    }

    @Test
    void fewCasesAndMixedResultsSayNothing() {
        assertThat(OneSidedResultTest.judge(19, 0, 1000, 900, 1)).isEmpty();
        assertThat(OneSidedResultTest.judge(30, 0, 99, 90, 1)).isEmpty();
        assertThat(OneSidedResultTest.judge(30, 1, 1000, 900, 1)).isEmpty();
        assertThat(OneSidedResultTest.judge(30, 29, 1000, 10, 1)).isEmpty();
    }
}
