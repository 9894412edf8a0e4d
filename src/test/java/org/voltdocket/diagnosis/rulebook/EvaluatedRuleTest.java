package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.signal.NormalDistribution;
import org.voltdocket.kernel.Interval;

/** One measurement against one row, by hand-computed numbers. Rows are made for the test and borrow a row's sentences. */
class EvaluatedRuleTest {

    private static final Rule.Range ZERO_TO_TWO = new Rule.Range(0, 2);

    /** At most 0.5: outside speaks 10 decibans for the source, inside 10 against. */
    private static Rule atMost(double limit, Optional<Rule.Range> plausible) {
        return new Rule(
                "ripple",
                "ripple",
                Optional.empty(),
                Optional.of(new Rule.Limit(limit, Optional.empty(), Map.of())),
                "V",
                "made for a test",
                "ripple",
                List.of(),
                Rule.Decides.NOTHING,
                Map.of(),
                Map.of(Cause.CHARGING_SOURCE, -10.0),
                Map.of(Cause.CHARGING_SOURCE, 10.0),
                plausible,
                List.of());
    }

    private static EvaluatedRule judge(Rule rule, Interval value) {
        return EvaluatedRule.of(rule, Measurement.of(rule.quantity(), null, value), null);
    }

    private static double weight(EvaluatedRule judged) {
        return judged.decibans().getOrDefault(Cause.CHARGING_SOURCE, 0.0);
    }

    @Test
    void anExactValueGivesTheWholeWeightAndTheLimitIsInside() {
        Rule rule = atMost(0.5, Optional.empty());
        assertThat(weight(judge(rule, Interval.exact(0.5)))).isCloseTo(-10, within(1e-9));
        assertThat(weight(judge(rule, Interval.exact(0.5000001)))).isCloseTo(10, within(1e-9));
        assertThat(judge(rule, Interval.exact(0.5)).finding().result()).isEqualTo(Result.INSIDE);
        assertThat(judge(rule, Interval.exact(0.51)).finding().low()).isNull();
        assertThat(judge(rule, Interval.exact(0.51)).finding().high()).isNull();
        assertThat(judge(rule, new Interval(0.4, 0.3, 0.6)).finding().high()).isEqualTo(0.6);
    }

    /**
     * Value on the limit: half of the error lies on each side. A value outside has the prior probability 0.1, so p = 0.1;
     * both sides are equally likely, so the measurement has no weight.
     */
    @Test
    void aValueOnTheLimitHasThePriorProbabilityAndNoWeight() {
        EvaluatedRule judged = judge(atMost(0.5, Optional.empty()), Interval.ofStandardError(0.5, 0.1));
        assertThat(judged.outside()).isCloseTo(0.1, within(1e-9));
        assertThat(weight(judged)).isZero();
        assertThat(judged.finding().result()).isEqualTo(Result.UNCERTAIN);
        assertThat(judged.finding().said()).endsWith(Sentences.plain("finding.uncertain"));
    }

    /**
     * With a plausible range of 0 to 2 the inside takes a quarter of it and the outside three: each likelihood is spread over
     * its share. On the limit p = (0.1·0.5/0.75) / (0.1·0.5/0.75 + 0.9·0.5/0.25) = 1/28.
     */
    @Test
    void aPlausibleRangeSpreadsEachSideOverItsShare() {
        EvaluatedRule judged = judge(atMost(0.5, Optional.of(ZERO_TO_TWO)), Interval.ofStandardError(0.5, 0.1));
        assertThat(judged.outside()).isCloseTo(1 / 28.0, within(1e-6));
    }

    private static Rule window(Optional<Rule.Range> plausible) {
        return new Rule(
                "sensor-offset",
                "sensor-offset-by-clamp",
                Optional.of(new Rule.Limit(-1, Optional.empty(), Map.of())),
                Optional.of(new Rule.Limit(1, Optional.empty(), Map.of())),
                "A",
                "made for a test",
                "sensor",
                List.of(),
                Rule.Decides.NOTHING,
                Map.of(Cause.CURRENT_SENSOR, 10.0),
                Map.of(Cause.CURRENT_SENSOR, -10.0),
                Map.of(Cause.CURRENT_SENSOR, 10.0),
                plausible,
                List.of());
    }

    /**
     * An error far wider than the plausible range says nothing about the side: the probability outside stays at its prior,
     * 0.1, and no cause gets any weight.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-8, -0.8, 0, 0.8, 3, 11})
    void aMeasurementWithoutInformationHasNoWeight(double value) {
        Rule rule = window(Optional.of(new Rule.Range(-12, 12)));
        EvaluatedRule vague = judge(rule, Interval.ofStandardError(value, 1000));
        assertThat(vague.outside()).isCloseTo(0.1, within(1e-3));
        assertThat(vague.decibans()).isEmpty();
    }

    @Test
    void aValueBeyondThePlausibleRangeStillCounts() {
        Rule rule = window(Optional.of(new Rule.Range(-12, 12)));
        for (double value : new double[] {-40, -12.5, 12.5, 40}) {
            EvaluatedRule far = judge(rule, Interval.ofStandardError(value, 0.5));
            assertThat(far.outside()).isCloseTo(1, within(1e-9));
            assertThat(far.decibans().get(Cause.CURRENT_SENSOR)).isCloseTo(10, within(1e-6));
        }
    }

    @Test
    void theWeightGrowsWithTheDistanceFromTheLimit() {
        Rule rule = atMost(0.5, Optional.of(ZERO_TO_TWO));
        double before = Double.NEGATIVE_INFINITY;
        for (double value = 0; value <= 1.2; value += 0.05) {
            double now = weight(judge(rule, Interval.ofStandardError(value, 0.1)));
            assertThat(now).isGreaterThanOrEqualTo(before - 1e-9).isBetween(-10.0, 10.0);
            before = now;
        }
        assertThat(weight(judge(rule, Interval.ofStandardError(0, 0.1)))).isCloseTo(-10, within(0.1));
        assertThat(weight(judge(rule, Interval.ofStandardError(1.2, 0.1)))).isCloseTo(10, within(0.1));
    }

    @Test
    void anAskewIntervalIsReadOnTheSideOfTheLimit() {
        EvaluatedRule wide = judge(atMost(0.5, Optional.empty()), new Interval(0.4, 0.39, 0.9));
        EvaluatedRule narrow = judge(atMost(0.5, Optional.empty()), new Interval(0.4, 0.0, 0.45));
        assertThat(wide.outside()).isGreaterThan(0.02);
        assertThat(narrow.outside()).isLessThan(0.01);
    }

    /** An end of the interval that lies on the limit passes it not; one that only touches it from outside is not clear. */
    @Test
    void anIntervalThatEndsOnALimitHasNotPassedIt() {
        Rule rule = window(Optional.empty());
        assertThat(judge(rule, new Interval(0, -1, 1)).finding().result()).isEqualTo(Result.INSIDE);
        assertThat(judge(rule, new Interval(1.2, 1, 1.4)).finding().result()).isEqualTo(Result.UNCERTAIN);
        assertThat(judge(rule, new Interval(-1.2, -1.4, -1)).finding().result()).isEqualTo(Result.UNCERTAIN);
        assertThat(judge(rule, new Interval(1.2, 1.01, 1.4)).finding().result()).isEqualTo(Result.OUTSIDE);
        assertThat(judge(rule, new Interval(-1.2, -1.4, -1.01)).finding().result())
                .isEqualTo(Result.OUTSIDE);
    }

    /** A share that cannot fall further has no error downwards: all of its chance lies at its value or above. */
    @Test
    void anIntervalOfOneSideHasNoChanceOnTheOther() {
        Rule rule = atMost(0.5, Optional.empty());
        assertThat(judge(rule, new Interval(0.6, 0.6, 0.8)).outside()).isEqualTo(1);
        assertThat(judge(rule, new Interval(0.4, 0.2, 0.4)).outside()).isZero();
    }

    /**
     * A window without a plausible range reaches five widths to either side: of -1 to 1, from -11 to 11. On
     * its upper limit half of the error is spread over 2 A inside and half over 10 A above:
     * p = (0.05·0.5/10) / (0.05·0.5/10 + 0.9·0.5/2) = 1/91, and as much on the lower limit.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-1, 1})
    void aWindowReachesFiveWidths(double limit) {
        Interval value = Interval.ofStandardError(limit, 0.1);
        Rule rule = window(Optional.empty());
        Measurement measured = Measurement.of(rule.quantity(), null, value);
        assertThat(EvaluatedRule.of(rule, measured, null).outside()).isCloseTo(1 / 91.0, within(1e-6));
    }

    @Test
    void aFindingInsideAWindowNamesBothEndsAndOneOfASingleLimitOne() {
        Finding inside = judge(window(Optional.empty()), Interval.exact(0.2)).finding();
        assertThat(inside.limit()).isEqualTo(-1);
        assertThat(inside.limitHigh()).isEqualTo(1);
        Finding single =
                judge(atMost(0.5, Optional.empty()), Interval.exact(0.2)).finding();
        assertThat(single.limit()).isEqualTo(0.5);
        assertThat(single.limitHigh()).isNull();
    }

    @Test
    void theFindingNamesTheLimitThatIsBrokenAndTheWindow() {
        Rule window = Editions.of("2026.1").rules().stream()
                .filter(r -> r.low().isPresent() && r.high().isPresent())
                .findFirst()
                .orElseThrow();
        double low = window.low().get().at(Double.NaN, null);
        double high = window.high().get().at(Double.NaN, null);
        assertThat(judge(window, Interval.exact(low - 1)).finding().limit()).isEqualTo(low);
        assertThat(judge(window, Interval.exact(high + 1)).finding().limit()).isEqualTo(high);
        assertThat(judge(window, Interval.exact(high + 1)).finding().limitHigh())
                .isEqualTo(high);
        assertThat(judge(window, Interval.exact(low)).finding().comparison()).isEqualTo("within");
    }

    /** Tail probabilities of the normal distribution (tables; also Abramowitz and Stegun, 1964, table 26.1). */
    @Test
    void theNormalDistributionAgreesWithTheTables() {
        assertThat(NormalDistribution.cumulative(0)).isEqualTo(0.5);
        assertThat(NormalDistribution.cumulative(1)).isCloseTo(0.8413447461, within(1e-10));
        assertThat(NormalDistribution.cumulative(Interval.Z95)).isCloseTo(0.975, within(1e-12));
        assertThat(NormalDistribution.cumulative(-3)).isCloseTo(0.0013498980, within(1e-10));
    }

    @Test
    void aLimitByTemperatureOrChemistryIsTheOneThatApplies() {
        Rule.Limit byChemistry =
                new Rule.Limit(14.8, Optional.empty(), Map.of(org.voltdocket.diagnosis.Chemistry.GEL, 14.4));
        assertThat(byChemistry.at(20, org.voltdocket.diagnosis.Chemistry.GEL)).isEqualTo(14.4);
        assertThat(byChemistry.at(20, org.voltdocket.diagnosis.Chemistry.AGM)).isEqualTo(14.8);
        assertThat(byChemistry.at(20, null)).isEqualTo(14.8);
    }

    /** Bayes: with probability p the value means something, and with 1 - p nothing: 10·log10(0.3·10 + 0.7) = 5.68 decibans. */
    @Test
    void aValueWhoseConditionIsUncertainWeighsByItsProbability() {
        Rule rule = atMost(0.5, Optional.empty());
        Measurement value = Measurement.exact(rule.quantity(), null, 0.6);
        EvaluatedRule judged = EvaluatedRule.of(rule, value.given(0.3), null);
        assertThat(weight(judged)).isCloseTo(5.6820, within(1e-4));
        assertThat(judged.finding().result()).isEqualTo(Result.UNCERTAIN);
        assertThat(weight(EvaluatedRule.of(rule, value.given(0), null))).isZero();
        assertThat(weight(EvaluatedRule.of(rule, value.given(1), null))).isCloseTo(10, within(1e-9));
    }
}
