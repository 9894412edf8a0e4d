package org.voltdocket.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.insight.estimate.KaplanMeier;
import org.voltdocket.insight.estimate.Lifetimes;
import org.voltdocket.insight.estimate.PChart;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.insight.estimate.Weibull;
import org.voltdocket.kernel.Interval;

/** The estimators against published answers. */
class PublishedEstimatesTest {

    /**
     * NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3: ten failures, ten units still running at 500 hours.
     * Its scale, 606.5280, is where its program stopped; the likelihood is highest at 606.5276.
     */
    @Test
    void weibullOfTheHandbook() {
        Lifetimes.Collector collector = new Lifetimes.Collector().alive(500, 10);
        for (double hours : new double[] {54, 187, 216, 240, 244, 335, 361, 373, 375, 386}) {
            collector.failed(hours, 1);
        }
        Weibull fit = Weibull.fit(collector.lives()).orElseThrow();
        assertThat(fit.scale().value()).isCloseTo(606.5280, within(1e-3));
        assertThat(fit.shape().value()).isCloseTo(1.7208, within(5e-5));
        assertThat(-fit.logLikelihood()).isCloseTo(75.135, within(5e-4));
    }

    /**
     * Remission under 6-mercaptopurine, weeks (E. J. Freireich and others, 1963, Blood 21, 699-716; data from memory, answers
     * computed apart from this project).
     */
    @Test
    void kaplanMeierOfTheRemissions() {
        Lifetimes.Collector collector = new Lifetimes.Collector();
        for (double weeks : new double[] {6, 6, 6, 7, 10, 13, 16, 22, 23}) {
            collector.failed(weeks, 1);
        }
        for (double weeks : new double[] {6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35}) {
            collector.alive(weeks, 1);
        }
        double[][] published = {
            {6, .8571, .0764},
            {7, .8067, .0869},
            {10, .7529, .0963},
            {13, .6902, .1068},
            {16, .6275, .1141},
            {22, .5378, .1282},
            {23, .4482, .1346}
        };
        List<KaplanMeier.Step> steps = KaplanMeier.of(collector.lives()).steps();
        assertThat(steps).hasSize(published.length);
        for (int i = 0; i < published.length; i++) {
            assertThat(steps.get(i).age()).isEqualTo(published[i][0]);
            assertThat(steps.get(i).survival().value()).isCloseTo(published[i][1], within(5.1e-5));
            assertThat(steps.get(i).standardError()).isCloseTo(published[i][2], within(5.1e-5));
        }
    }

    /** Score intervals that R. G. Newcombe published (1998, Statistics in Medicine 17, 857-872, table I). */
    @ParameterizedTest
    @CsvSource({"81,263,.2553,.3662", "15,148,.0624,.1605", "0,20,0,.1611", "1,29,.0061,.1718"})
    void scoreIntervals(long count, long of, double low, double high) {
        Interval share = new Proportion(count, of).interval();
        assertThat(share.low()).isCloseTo(low, within(5.1e-5));
        assertThat(share.high()).isCloseTo(high, within(5.1e-5));
    }

    /** 292 marked of 15000 in thirty samples of 500: centre and limits computed from the formula of the NIST handbook, 6.3.3.2. */
    @Test
    void limitsOfAPChart() {
        List<Proportion> samples = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            samples.add(new Proportion(i < 22 ? 10 : 9, 500));
        }
        PChart chart = PChart.of(samples);
        assertThat(chart.centre()).isCloseTo(.0194667, within(5e-8));
        assertThat(chart.points()).hasSize(30).allSatisfy(point -> {
            assertThat(point.low()).isCloseTo(.000931, within(5e-7));
            assertThat(point.high()).isCloseTo(.038003, within(5e-7));
            assertThat(point.outside()).isFalse();
        });
    }
}
