package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

/** A measurement counts for what it tells, from nothing to the whole weight of its side. */
class NeutralityTest {

    static Stream<Rule> rows() {
        return Editions.all().stream().flatMap(book -> book.rules().stream());
    }

    private static EvaluatedRule judge(Rule rule, Interval value) {
        return EvaluatedRule.of(rule, Measurement.of(rule.quantity(), null, value), null);
    }

    private static double edge(Rule rule) {
        return rule.low().or(rule::high).orElseThrow().at(Double.NaN, null);
    }

    @ParameterizedTest
    @MethodSource("rows")
    void aMeasurementThatTellsNothingGivesNoCauseAnything(Rule rule) {
        for (double away : new double[] {-3, 0, 3}) {
            Interval vague = Interval.ofStandardError(edge(rule) * (1 + 0.1 * away), 1e9 * (1 + Math.abs(edge(rule))));
            assertThat(judge(rule, vague).decibans()).as(rule.id()).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void aMeasurementThatTellsEverythingGivesTheWeightsOfItsSide(Rule rule) {
        for (Rule.Example example : rule.examples()) {
            double distance = Stream.of(rule.low(), rule.high())
                    .flatMap(Optional::stream)
                    .mapToDouble(limit -> Math.abs(example.value() - limit.at(example.celsius(), null)))
                    .min()
                    .orElseThrow();
            if (distance == 0) {
                continue;
            }
            Interval value = Interval.ofStandardError(example.value(), distance / 12);
            Measurement measured = Measurement.of(rule.quantity(), null, value).at(example.celsius());
            Map<Cause, Double> weights = example.result().equals("inside")
                    ? rule.inside()
                    : example.result().equals("below") ? rule.below() : rule.above();
            EvaluatedRule judged = EvaluatedRule.of(rule, measured, null);
            for (Cause cause : Cause.values()) {
                assertThat(judged.decibans().getOrDefault(cause, 0.0))
                        .as("%s %s %s", rule.id(), example, cause)
                        .isCloseTo(weights.getOrDefault(cause, 0.0), within(0.05));
            }
        }
    }

    /** Whatever is measured, a cause gets no more than the row has for it, and no less. */
    @ParameterizedTest
    @MethodSource("rows")
    void noMeasurementGivesMoreThanTheRowHas(Rule rule) {
        Random chance = new Random(rule.id().hashCode());
        for (int i = 0; i < 50; i++) {
            double size = Math.abs(edge(rule)) + 0.1;
            Interval value = Interval.ofStandardError(
                    edge(rule) + size * chance.nextGaussian(), size * Math.pow(10, 3 * chance.nextDouble() - 2));
            EvaluatedRule judged = judge(rule, value);
            for (Cause cause : Cause.values()) {
                List<Double> all = Stream.of(rule.below(), rule.inside(), rule.above())
                        .map(w -> w.getOrDefault(cause, 0.0))
                        .toList();
                assertThat(judged.decibans().getOrDefault(cause, 0.0))
                        .isBetween(
                                Math.min(0, all.stream().min(Double::compare).orElseThrow()) - 1e-9,
                                Math.max(0, all.stream().max(Double::compare).orElseThrow()) + 1e-9);
            }
        }
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
                Map.of(Cause.CURRENT_SENSOR, 14.0),
                Map.of(Cause.CURRENT_SENSOR, -14.0),
                Map.of(Cause.CURRENT_SENSOR, 14.0),
                plausible,
                List.of());
    }

    private static double weight(Rule rule, double value, double standardError) {
        return judge(rule, Interval.ofStandardError(value, standardError))
                .decibans()
                .getOrDefault(Cause.CURRENT_SENSOR, 0.0);
    }

    @Test
    void theWeightShrinksToNothingAsTheIntervalWidens() {
        for (Optional<Rule.Range> plausible :
                List.of(Optional.of(new Rule.Range(-12, 12)), Optional.<Rule.Range>empty())) {
            for (double value : new double[] {0, 0.5, 3, -8}) {
                double before = 15;
                for (double se = 0.01; se < 1e6; se *= 1.5) {
                    double size = Math.abs(weight(window(plausible), value, se));
                    boolean turns = Math.abs(value) > 1 && size > before;
                    assertThat(turns && weight(window(plausible), value, se) > 0)
                            .isFalse();
                    before = size;
                }
                assertThat(before).isEqualTo(0);
            }
        }
    }

    @Test
    void theWeightGrowsWithTheDistanceFromTheLimit() {
        for (double se : new double[] {0.05, 0.5, 2, 6}) {
            double before = -15;
            for (double value = 0; value < 11; value += 0.1) {
                double now = weight(window(Optional.of(new Rule.Range(-12, 12))), value, se);
                assertThat(now).as("%.2f ± %.2f", value, se).isGreaterThanOrEqualTo(before - 0.06);
                before = now;
            }
        }
    }

    /**
     * At most 0.5, 10 decibans outside and −10 inside, one standard error above: m = Φ(1) = 0.841345 outside and 0.158655 inside,
     * π = 0.1 and 0.9; (0.1·(0.158655 + 0.682690·10) + 0.9·0.158655) / (0.1·0.841345 + 0.9·0.158655) = 0.841345 / 0.226924 =
     * 3.707606, 5.6909 decibans.
     */
    @Test
    void aStandardErrorOutsideByHand() {
        Rule rule = new Rule(
                "ripple",
                "ripple",
                Optional.empty(),
                Optional.of(new Rule.Limit(0.5, Optional.empty(), Map.of())),
                "V",
                "made for a test",
                "ripple",
                List.of(),
                Rule.Decides.NOTHING,
                Map.of(),
                Map.of(Cause.CHARGING_SOURCE, -10.0),
                Map.of(Cause.CHARGING_SOURCE, 10.0),
                Optional.empty(),
                List.of());
        assertThat(judge(rule, Interval.ofStandardError(0.6, 0.1)).decibans().get(Cause.CHARGING_SOURCE))
                .isCloseTo(5.6909, within(1e-3));
        assertThat(judge(rule, Interval.ofStandardError(0.5, 0.1)).decibans()).isEmpty();
    }
}
