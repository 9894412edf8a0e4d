package org.voltdocket.returned.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Single sampling plans of ISO 2859-1, level II, as remembered; and what follows from how the tables are built. */
class SamplingPlanTableTest {

    /** ISO 2859-1, table 1 and 2-A, level II: from memory, agreed with the project's list of facts. */
    @ParameterizedTest
    @CsvSource({
        "8, 1.0, E, 8, 0",
        "90, 1.0, E, 13, 0",
        "500, 1.0, H, 50, 1",
        "1200, 1.0, J, 80, 2",
        "3200, 1.0, K, 125, 3",
        "25, 2.5, C, 5, 0",
        "150, 2.5, F, 20, 1",
        "280, 2.5, G, 32, 2",
        "500, 2.5, H, 50, 3",
        "1200, 2.5, J, 80, 5",
        "3200, 2.5, K, 125, 7",
        "15, 4.0, B, 3, 0",
        "90, 4.0, E, 13, 1",
        "150, 4.0, F, 20, 2",
        "280, 4.0, G, 32, 3",
        "500, 4.0, H, 50, 5",
        "1200, 4.0, J, 80, 7"
    })
    void normalInspection(int lot, double aql, char letter, int sample, int acceptance) {
        assertThat(SamplingPlanTable.plan(InspectionSeverity.NORMAL, InspectionLevel.II, lot, aql))
                .isEqualTo(new SamplingPlan(letter, Math.min(lot, sample), acceptance));
    }

    /** A worked exercise of a public examination page on GB/T 2828.1, the same tables: N = 50, level II, AQL 1.0 gives (13; 0, 1). */
    @Test
    void anArrowLeadsToTheNextPlanWithItsOwnSampleSize() {
        assertThat(SamplingPlanTable.letter(InspectionLevel.II, 50)).isEqualTo('D');
        assertThat(SamplingPlanTable.plan(InspectionSeverity.NORMAL, InspectionLevel.II, 50, 1.0))
                .isEqualTo(new SamplingPlan('E', 13, 0));
        // F points up, G down
        assertThat(SamplingPlanTable.plan(InspectionSeverity.NORMAL, 'F', 1.0)).isEqualTo(new SamplingPlan('E', 13, 0));
        assertThat(SamplingPlanTable.plan(InspectionSeverity.NORMAL, 'G', 1.0)).isEqualTo(new SamplingPlan('H', 50, 1));
        assertThat(SamplingPlanTable.plan(InspectionSeverity.TIGHTENED, 'H', 1.0))
                .isEqualTo(new SamplingPlan('J', 80, 1));
    }

    /** Table 1 at levels I and III: seen on a public sheet of the code letters, GOST R on ISO 2859-1 letters. */
    @ParameterizedTest
    @CsvSource({"8, A, B", "15, A, C", "25, B, D", "50, C, E", "90, C, F", "280, E, H", "1200, G, K", "3200, H, L"})
    void otherLevels(int lot, char first, char third) {
        assertThat(SamplingPlanTable.letter(InspectionLevel.I, lot)).isEqualTo(first);
        assertThat(SamplingPlanTable.letter(InspectionLevel.III, lot)).isEqualTo(third);
    }

    /** Tables 2-B and 2-C, N = 1000, level II: from memory. */
    @Test
    void tightenedAndReduced() {
        assertThat(SamplingPlanTable.plan(InspectionSeverity.TIGHTENED, InspectionLevel.II, 1000, 1.0))
                .isEqualTo(new SamplingPlan('J', 80, 1));
        assertThat(SamplingPlanTable.plan(InspectionSeverity.REDUCED, InspectionLevel.II, 1000, 1.0))
                .isEqualTo(new SamplingPlan('J', 32, 1));
        assertThat(SamplingPlanTable.plan(InspectionSeverity.TIGHTENED, InspectionLevel.II, 1000, 2.5))
                .isEqualTo(new SamplingPlan('J', 80, 3));
        assertThat(SamplingPlanTable.plan(InspectionSeverity.REDUCED, InspectionLevel.II, 1000, 2.5))
                .isEqualTo(new SamplingPlan('J', 32, 3));
    }

    @Test
    void everyPlaceOfEveryTableHasAPlanThatGuardsTheProducer() {
        for (InspectionSeverity severity : InspectionSeverity.values()) {
            for (double aql : SamplingPlanTable.AQLS) {
                for (char letter : "ABCDEFGHJKLMNPQR".toCharArray()) {
                    SamplingPlan plan = SamplingPlanTable.plan(severity, letter, aql);
                    assertThat(plan.acceptance()).isLessThan(plan.sampleSize());
                    if (severity == InspectionSeverity.NORMAL) {
                        // at the AQL a series is accepted with about 88 to 99 %: ISO 2859-1, tables 5-A and 10, as
                        // remembered
                        assertThat(OperatingCharacteristic.ofSeries(plan, aql / 100))
                                .as(plan + " " + aql)
                                .isBetween(0.87, 0.999);
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(chars = {'C', 'F', 'H', 'J', 'L', 'N'})
    void tightenedAcceptsLessReducedMore(char letter) {
        for (double aql : SamplingPlanTable.AQLS) {
            double bad = 3 * aql / 100;
            double normal = OperatingCharacteristic.ofSeries(
                    SamplingPlanTable.plan(InspectionSeverity.NORMAL, letter, aql), bad);
            assertThat(OperatingCharacteristic.ofSeries(
                            SamplingPlanTable.plan(InspectionSeverity.TIGHTENED, letter, aql), bad))
                    .isLessThanOrEqualTo(normal);
            assertThat(OperatingCharacteristic.ofSeries(
                            SamplingPlanTable.plan(InspectionSeverity.REDUCED, letter, aql), bad))
                    .isGreaterThanOrEqualTo(normal);
        }
    }

    /** n 80, c 2: computed from the binomial formula by another tool, .9534 at 1 % nonconforming. */
    @Test
    void operatingCharacteristic() {
        SamplingPlan plan = new SamplingPlan('J', 80, 2);
        assertThat(OperatingCharacteristic.ofSeries(plan, 0.01)).isCloseTo(0.9534, within(5e-5));
        assertThat(OperatingCharacteristic.ofSeries(plan, 0)).isEqualTo(1);
        assertThat(OperatingCharacteristic.shareAt(plan, 0.9534)).isCloseTo(0.01, within(1e-5));
        // of ten with one bad, five tested, none allowed: 1 - 5/10
        assertThat(OperatingCharacteristic.ofLot(new SamplingPlan('C', 5, 0), 10, 1))
                .isCloseTo(0.5, within(1e-12));
    }
}
