package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Assessment.Weight;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.rulebook.EvaluatedRule;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Weight of evidence in decibans (I. J. Good, 1950): posterior odds are prior odds times ten to the tenth of the sum. */
class CauseRankingTest {

    private static final Rulebook EVEN = book();

    private static Rulebook book() {
        Map<Cause, Double> odds = new EnumMap<>(Cause.class);
        for (Cause cause : Cause.values()) {
            odds.put(cause, 0.1);
        }
        return new Rulebook("even", null, odds, "made for a test", List.of());
    }

    private static EvaluatedRule judged(String rule, String group, String finding, Map<Cause, Double> decibans) {
        Rule row = new Rule(
                rule,
                "ripple",
                Optional.empty(),
                Optional.empty(),
                "V",
                "made for a test",
                group,
                List.of(),
                Rule.Decides.NOTHING,
                Map.of(),
                Map.of(),
                Map.of(),
                Optional.empty(),
                List.of());
        Finding shown = new Finding(
                finding, rule, null, "ripple", 1.0, null, null, "V", 1.0, null, "at-most", Result.OUTSIDE, "", "");
        return new EvaluatedRule(row, shown, decibans, 1);
    }

    private static RankedCause of(Cause cause, EvaluatedRule... judged) {
        return CauseRanking.of(EVEN, List.of(judged)).stream()
                .filter(c -> c.cause() == cause)
                .findFirst()
                .orElseThrow();
    }

    private static final Map<Cause, Double> TEN = Map.of(Cause.WIRING, 10.0);

    @Test
    void withoutFindingsTheStartingOddsStand() {
        CauseRanking.of(EVEN, List.of())
                .forEach(c -> assertThat(c.probability()).isCloseTo(0.1, within(1e-12)));
        assertThat(CauseRanking.of(EVEN, List.of()))
                .extracting(RankedCause::cause)
                .containsExactly(Cause.values());
    }

    /** Ten decibans make odds of 1 to 9 into 10 to 9. */
    @Test
    void tenDecibansByHand() {
        assertThat(of(Cause.WIRING, judged("a", "g", "a/1", TEN)).probability()).isCloseTo(10 / 19.0, within(1e-12));
        assertThat(of(Cause.DUTY, judged("a", "g", "a/1", TEN)).probability()).isCloseTo(1 / 19.0, within(1e-12));
    }

    /** Two looks by one rule that say the opposite of each other are no reason for anything. */
    @Test
    void looksThatCancelEachOtherAreNoReason() {
        Map<Cause, Double> against = Map.of(Cause.WIRING, -10.0);
        RankedCause wiring = of(Cause.WIRING, judged("a", "g", "a/1", TEN), judged("a", "g", "a/2", against));
        assertThat(wiring.weights()).isEmpty();
        assertThat(wiring.probability()).isCloseTo(0.1, within(1e-12));
    }

    @Test
    void findingsOfDifferentGroupsAddUp() {
        RankedCause wiring = of(Cause.WIRING, judged("a", "g", "a/1", TEN), judged("b", "h", "b/1", TEN));
        assertThat(wiring.probability()).isCloseTo(100 / 109.0, within(1e-12));
        assertThat(wiring.weights()).hasSize(2);
    }

    @Test
    void ofOneGroupOnlyTheStrongestCounts() {
        EvaluatedRule strong = judged("a", "g", "a/1", TEN);
        EvaluatedRule weak = judged("b", "g", "b/1", Map.of(Cause.WIRING, 6.0));
        RankedCause wiring = of(Cause.WIRING, weak, strong);
        assertThat(wiring.probability()).isCloseTo(10 / 19.0, within(1e-12));
        assertThat(wiring.weights()).containsExactly(new Weight("a/1", 10));
    }

    @Test
    void ofOneGroupTheStrongestForAndTheStrongestAgainstCountBoth() {
        RankedCause wiring = of(
                Cause.WIRING,
                judged("a", "g", "a/1", TEN),
                judged("b", "g", "b/1", Map.of(Cause.WIRING, -4.0)),
                judged("c", "g", "c/1", Map.of(Cause.WIRING, -7.0)));
        assertThat(wiring.weights()).containsExactly(new Weight("a/1", 10), new Weight("c/1", -7));
    }

    @Test
    void severalLooksByOneRuleCountAsTheirMean() {
        EvaluatedRule one = judged("a", "g", "a/1", TEN);
        EvaluatedRule two = judged("a", "g", "a/2", TEN);
        EvaluatedRule contrary = judged("a", "g", "a/3", Map.of(Cause.WIRING, -8.0));
        assertThat(of(Cause.WIRING, one, two).probability()).isCloseTo(10 / 19.0, within(1e-12));
        assertThat(of(Cause.WIRING, one, two, contrary).weights().stream()
                        .mapToDouble(Weight::decibans)
                        .sum())
                .isCloseTo(4, within(1e-12));
        EvaluatedRule silent = judged("a", "g", "a/4", Map.of());
        assertThat(of(Cause.WIRING, one, silent).weights()).containsExactly(new Weight("a/1", 5));
    }

    @Test
    void causesStandByProbabilityAndWeightsByStrength() {
        List<RankedCause> ranked = CauseRanking.of(
                EVEN,
                List.of(
                        judged("a", "g", "a/1", Map.of(Cause.WIRING, 3.0, Cause.DUTY, 2.0)),
                        judged("b", "h", "b/1", Map.of(Cause.WIRING, -9.0, Cause.DUTY, 5.0)),
                        judged("c", "i", "c/1", Map.of(Cause.WIRING, 12.0, Cause.NONE, 1.0))));
        assertThat(ranked).extracting(RankedCause::cause).startsWith(Cause.DUTY, Cause.WIRING, Cause.NONE);
        assertThat(ranked.get(1).weights())
                .containsExactly(new Weight("c/1", 12), new Weight("b/1", -9), new Weight("a/1", 3));
    }

    /** However many rows look at one measurement, it gives a cause no more than the row that says most, and takes no more. */
    @Test
    void manyRowsOnOneMeasurementAreBoundedByTheStrongestOfThem() {
        Random chance = new Random(9);
        for (int round = 0; round < 100; round++) {
            double most = 0;
            double least = 0;
            List<EvaluatedRule> all = new ArrayList<>();
            for (int i = 0; i < 1 + chance.nextInt(8); i++) {
                double decibans = 24 * chance.nextDouble() - 12;
                most = Math.max(most, decibans);
                least = Math.min(least, decibans);
                all.add(judged("r" + i, "one fact", "r" + i + "/1", Map.of(Cause.WIRING, decibans)));
            }
            double given = CauseRanking.of(EVEN, all).stream()
                    .filter(c -> c.cause() == Cause.WIRING)
                    .flatMap(c -> c.weights().stream())
                    .mapToDouble(Weight::decibans)
                    .sum();
            assertThat(given).isCloseTo(most + least, within(1e-9));
        }
    }

    @Test
    void whatTheWeightsSayIsTheProbability() {
        Random chance = new Random(6);
        for (int round = 0; round < 50; round++) {
            List<EvaluatedRule> all = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                Map<Cause, Double> decibans = new EnumMap<>(Cause.class);
                for (Cause cause : Cause.values()) {
                    if (chance.nextInt(3) == 0) {
                        decibans.put(cause, 30 * chance.nextDouble() - 15);
                    }
                }
                all.add(judged("r" + i / 2, "g" + i / 4, "f" + i, decibans));
            }
            List<RankedCause> ranked = CauseRanking.of(EVEN, all);
            double[] odds = ranked.stream()
                    .mapToDouble(c -> Math.pow(
                            10,
                            c.weights().stream().mapToDouble(Weight::decibans).sum() / 10))
                    .toArray();
            double sum = java.util.Arrays.stream(odds).sum();
            for (int i = 0; i < odds.length; i++) {
                assertThat(ranked.get(i).probability()).isCloseTo(odds[i] / sum, within(1e-9));
            }
            Collections.shuffle(all, chance);
            assertThat(CauseRanking.of(EVEN, all).get(0).probability())
                    .isCloseTo(ranked.get(0).probability(), within(1e-9));
        }
    }
}
