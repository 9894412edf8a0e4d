package org.voltdocket.returned.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Recomputes acceptance probabilities from the binomial and the Poisson formula and compares the plan table with them. The
 * reference values are those of MIL-STD-105E (1989, public domain), table II-A for the plans and table X for the operating
 * characteristics, all from memory.
 *
 * <p>Formulas: with n tested, acceptance number c and a share p nonconforming, the probability of acceptance is the sum over d
 * = 0 … c of C(n, d) p^d (1 − p)^(n − d) (binomial) or of e^(−np) (np)^d / d! (Poisson). Table X uses the binomial for n ≤ 80
 * and AQL ≤ 10, and the Poisson distribution otherwise.
 */
class SamplingPlanProbabilityTest {

    private static final String LETTERS = "ABCDEFGHJKLMNPQR";

    private static double binomial(SamplingPlan plan, double p) {
        double term = Math.pow(1 - p, plan.sampleSize());
        double sum = term;
        for (int d = 1; d <= plan.acceptance(); d++) {
            term *= (plan.sampleSize() - d + 1) / (double) d * p / (1 - p);
            sum += term;
        }
        return sum;
    }

    private static double poisson(double mean, int acceptance) {
        double term = Math.exp(-mean);
        double sum = term;
        for (int d = 1; d <= acceptance; d++) {
            term *= mean / d;
            sum += term;
        }
        return sum;
    }

    /** MIL-STD-105E, table X: share nonconforming, per cent, accepted with 95 % and with 10 % probability. */
    @ParameterizedTest
    @CsvSource({
        "E, 1.0, 13, 0, 0.394, 16.2",
        "F, 0.65, 20, 0, 0.256, 10.9",
        "F, 2.5, 20, 1, 1.80, 18.1",
        "H, 1.0, 50, 1, 0.715, 7.56",
        "H, 1.5, 50, 2, 1.66, 10.3",
        "J, 0.15, 80, 0, 0.0641, 2.84",
        "J, 0.65, 80, 1, 0.446, 4.78",
        "J, 1.0, 80, 2, 1.03, 6.52",
        "J, 1.5, 80, 3, 1.73, 8.16"
    })
    void normalPlansHaveTheOperatingCharacteristicOfTheStandard(
            char letter, double aql, int sample, int acceptance, double at95, double at10) {
        SamplingPlan plan = SamplingPlanTable.plan(InspectionSeverity.NORMAL, letter, aql);
        assertThat(plan).isEqualTo(new SamplingPlan(letter, sample, acceptance));
        assertThat(binomial(plan, at95 / 100)).isCloseTo(0.95, within(0.002));
        assertThat(binomial(plan, at10 / 100)).isCloseTo(0.10, within(0.002));
        assertThat(100 * OperatingCharacteristic.shareAt(plan, 0.95)).isCloseTo(at95, within(0.01 * at95));
        assertThat(100 * OperatingCharacteristic.shareAt(plan, 0.10)).isCloseTo(at10, within(0.01 * at10));
    }

    /** J. M. Cameron, Industrial Quality Control 9 (1952), table of np by acceptance number, from memory. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.0513, 2.303",
        "1, 0.355, 3.890",
        "2, 0.818, 5.322",
        "3, 1.366, 6.681",
        "5, 2.613, 9.275",
        "7, 3.981, 11.771",
        "10, 6.169, 15.407",
        "14, 9.246, 20.128"
    })
    void poissonFormulaAgreesWithTheUnityValues(int acceptance, double at95, double at10) {
        assertThat(poisson(at95, acceptance)).isCloseTo(0.95, within(5e-4));
        assertThat(poisson(at10, acceptance)).isCloseTo(0.10, within(5e-4));
    }

    @Test
    void theServerComputesTheBinomialFormulaForEveryPlan() {
        for (InspectionSeverity severity : InspectionSeverity.values()) {
            for (double aql : SamplingPlanTable.AQLS) {
                for (char letter : LETTERS.toCharArray()) {
                    SamplingPlan plan = SamplingPlanTable.plan(severity, letter, aql);
                    for (double times : new double[] {0.5, 1, 2, 4}) {
                        double p = Math.min(0.9, times * aql / 100);
                        assertThat(OperatingCharacteristic.ofSeries(plan, p))
                                .as("%s at %s %%", plan, 100 * p)
                                .isCloseTo(binomial(plan, p), within(1e-9));
                    }
                }
            }
        }
    }

    /** For small shares the Poisson formula approximates the binomial one: the error is below p, by Le Cam's inequality. */
    @Test
    void poissonApproximatesTheBinomialFormula() {
        for (double aql : SamplingPlanTable.AQLS) {
            for (char letter : LETTERS.toCharArray()) {
                SamplingPlan plan = SamplingPlanTable.plan(InspectionSeverity.NORMAL, letter, aql);
                double p = aql / 100;
                assertThat(poisson(plan.sampleSize() * p, plan.acceptance()))
                        .as("%s at %s %%", plan, aql)
                        .isCloseTo(binomial(plan, p), within(p));
            }
        }
    }

    /**
     * How the standard is built: plans with one acceptance number have about the same product of sample size and AQL, which
     * gives a lot at the AQL a probability of acceptance of 0.86 or more that grows with the acceptance number.
     */
    @Test
    void theProbabilityAtTheAqlGrowsWithTheAcceptanceNumber() {
        double[] least = {0.86, 0.89, 0.93, 0.95, 0.97, 0.97, 0.97, 0.97, 0.97};
        int[] acceptance = {0, 1, 2, 3, 5, 7, 10, 14, 21};
        for (double aql : SamplingPlanTable.AQLS) {
            for (char letter : LETTERS.toCharArray()) {
                SamplingPlan plan = SamplingPlanTable.plan(InspectionSeverity.NORMAL, letter, aql);
                int row = java.util.Arrays.binarySearch(acceptance, plan.acceptance());
                assertThat(row).as("acceptance number of %s", plan).isNotNegative();
                assertThat(binomial(plan, aql / 100))
                        .as("%s at %s %%", plan, aql)
                        .isGreaterThanOrEqualTo(least[row]);
            }
        }
    }
}
