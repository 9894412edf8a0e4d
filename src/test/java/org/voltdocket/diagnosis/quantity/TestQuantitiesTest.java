package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.kernel.Interval;

/** Which tests of a battery count, and for what. An AGM battery of 70 Ah, rated 700 A by EN. */
class TestQuantitiesTest {

    private static final OffsetDateTime MONDAY = OffsetDateTime.parse("2026-03-02T08:00:00Z");
    private static final double FULL_V = 12.85;
    private static final double LOW_V = 12.0;
    private static final Facts FACTS = new Facts(
            new Facts.BatteryFacts(Chemistry.AGM, 70.0, 700.0, CrankingStandard.EN, null, null, null, null),
            null,
            null,
            null);

    private static BatteryTest test(int hoursLater, double volts, Double amperes, Double milliohm, boolean charged) {
        return new BatteryTest(
                MONDAY.plusHours(hoursLater), volts, 20, amperes, CrankingStandard.EN, milliohm, 14.0, charged, null);
    }

    private static TestQuantities of(Reading... readings) {
        return of(
                Arrays.stream(readings).map(r -> Made.evidence("test " + r, r)).toList());
    }

    private static TestQuantities of(List<Evidence> evidence) {
        return TestQuantities.of(evidence, new MeasurementContext(FACTS, 20));
    }

    private static Optional<Interval> value(TestQuantities all, String quantity) {
        return all.measurements().stream()
                .filter(m -> m.quantity().equals(quantity))
                .map(Measurement::value)
                .reduce((a, b) -> {
                    throw new AssertionError("twice: " + quantity);
                });
    }

    private static double known(TestQuantities all, String quantity) {
        return value(all, quantity).orElseThrow().value();
    }

    @Test
    void aBatteryThatCameInLowIsNotJudgedUntilItIsCharged() {
        TestQuantities low = of(test(0, LOW_V, 300.0, 9.0, false));
        assertThat(low.tested()).isTrue();
        assertThat(low.judged()).isFalse();
        assertThat(known(low, "arrival-charge")).isLessThan(40);
        assertThat(value(low, "cranking-share")).isEmpty();
        assertThat(value(low, "resistance-by-rating")).isEmpty();

        TestQuantities charged = of(test(0, LOW_V, 300.0, 9.0, false), test(24, FULL_V, 630.0, 5.0, true));
        assertThat(charged.judged()).isTrue();
        assertThat(known(charged, "arrival-charge")).isLessThan(40);
        assertThat(known(charged, "charge-after-recharge")).isGreaterThan(80);
        assertThat(known(charged, "voltage-after-recharge")).isEqualTo(FULL_V);
        assertThat(known(charged, "cranking-share")).as("630 of 700 A").isCloseTo(90, within(1e-9));
        assertThat(known(charged, "resistance-by-rating"))
                .as("5 mΩ times 700 A")
                .isCloseTo(3.5, within(1e-9));
    }

    @Test
    void withoutATestNothingIsJudged() {
        TestQuantities none = of(new CrankingTest(MONDAY, 10.1, null, 20, null));
        assertThat(none.tested()).isFalse();
        assertThat(none.judged()).isFalse();
        assertThat(value(none, "arrival-charge")).isEmpty();
    }

    /** A full battery that nobody charged is judged too, but says nothing of how it holds what a charger gave. */
    @Test
    void aBatteryThatCameInFullIsJudgedAsItCame() {
        TestQuantities full = of(test(0, FULL_V, 560.0, null, false));
        assertThat(full.judged()).isTrue();
        assertThat(known(full, "cranking-share")).isCloseTo(80, within(1e-9));
        assertThat(known(full, "arrival-charge")).isGreaterThan(80);
        assertThat(value(full, "charge-after-recharge")).isEmpty();
        assertThat(value(full, "voltage-after-recharge")).isEmpty();
    }

    @Test
    void theLastTestDecidesAndATestOnTheBenchBeforeAnyOther() {
        Evidence workshop = Made.evidence("workshop", test(0, FULL_V, 350.0, null, true));
        Evidence later = Made.evidence("later", test(2, FULL_V, 420.0, null, true));
        assertThat(known(of(List.of(later, workshop)), "cranking-share")).isCloseTo(60, within(1e-9));
        Evidence made = Made.evidence("bench", test(1, FULL_V, 700.0, null, true));
        Evidence bench = new Evidence(made.id(), made.sha256(), Origin.BENCH, made.reading());
        assertThat(known(of(List.of(workshop, bench, later)), "cranking-share")).isCloseTo(100, within(1e-9));
    }

    /** Cold batteries resist more, so their resistance is not set against a rating: from 5 °C on. */
    @ParameterizedTest
    @CsvSource({"4.9, false", "5, true"})
    void aResistanceIsJudgedFromFiveDegreesOn(double celsius, boolean judged) {
        BatteryTest cold = new BatteryTest(MONDAY, FULL_V, celsius, null, null, 5.0, 14.0, true, null);
        assertThat(value(of(cold), "resistance-by-rating").isPresent()).isEqualTo(judged);
    }

    /** Two tests of the charged battery, 12 h to a week apart, tell what it lost standing. */
    @ParameterizedTest
    @CsvSource({"11, false", "12, true", "48, true", "167, true", "168, false"})
    void chargeLostIsToldByTestsHalfADayToAWeekApart(int hours, boolean told) {
        TestQuantities two = of(test(0, FULL_V, null, null, true), test(hours, 12.45, null, null, true));
        assertThat(value(two, "charge-lost").isPresent()).isEqualTo(told);
        value(two, "charge-lost").ifPresent(lost -> {
            assertThat(lost.value()).isBetween(20.0, 60.0);
            assertThat(lost.low()).isLessThan(lost.value());
            assertThat(lost.high()).isGreaterThan(lost.value());
        });
        TestQuantities uncharged = of(test(0, FULL_V, null, null, false), test(48, 12.45, null, null, true));
        assertThat(value(uncharged, "charge-lost")).isEmpty();
    }

    /** The shorter the rest, the more of the voltage may be surface charge, and the less is known of the charge below. */
    @Test
    void theShorterTheRestTheWiderTheCharge() {
        double before = 0;
        for (Double hours : new Double[] {12.0, 4.0, 2.0, 1.9}) {
            BatteryTest test = new BatteryTest(MONDAY, 12.4, 20, null, null, null, hours, false, null);
            Interval charge = value(of(test), "arrival-charge").orElseThrow();
            assertThat(charge.high() - charge.low()).as("%s h", hours).isGreaterThan(before);
            before = charge.high() - charge.low();
        }
    }

    /** A low battery sags when it cranks: that speaks against nobody, unless it was not low. */
    @Test
    void aSagWhileCrankingCountsOnlyWhereTheBatteryWasNotLow() {
        CrankingTest sags = new CrankingTest(MONDAY, 7.5, null, 20, null);
        CrankingTest holds = new CrankingTest(MONDAY, 10.4, null, 20, null);
        BatteryTest low = test(0, LOW_V, null, null, false);
        BatteryTest full = test(0, FULL_V, null, null, false);
        assertThat(value(of(low, sags), "cranking-minimum")).isEmpty();
        assertThat(known(of(low, holds), "cranking-minimum")).isEqualTo(10.4);
        assertThat(known(of(full, sags), "cranking-minimum")).isEqualTo(7.5);
        assertThat(known(of(sags), "cranking-minimum")).isEqualTo(7.5);
    }

    /** The better of idle and loaded, for a managed source may rest at idle; but one that gives way under load is worse. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "14.2, 14.0, 14.2",
                "12.6, 14.1, 14.1",
                "14.2, 13.7, 14.2",
                "14.2, 13.6, 13.6",
                "14.2, -, 14.2",
                "-, 13.9, 13.9"
            })
    void theBestVoltageOfACharging(Double idle, Double loaded, double best) {
        TestQuantities all = of(new ChargingTest(MONDAY, idle, loaded, null, 20, null));
        assertThat(known(all, "charging-test-best")).isEqualTo(best);
        assertThat(value(all, "charging-test-loaded").map(Interval::value)).isEqualTo(Optional.ofNullable(loaded));
        if (idle != null && loaded != null) {
            assertThat(known(all, "load-drop")).isCloseTo(idle - loaded, within(1e-12));
        } else {
            assertThat(value(all, "load-drop")).isEmpty();
        }
        assertThat(value(all, "ripple")).isEmpty();
    }

    /** Told to a tenth: 0.3 V peak to peak lies between 0.3 less and more 1.96 times 0.03. */
    @Test
    void aRippleIsKnownToATenth() {
        Interval ripple = value(of(new ChargingTest(MONDAY, 14.2, null, 0.3, 20, null)), "ripple")
                .orElseThrow();
        assertThat(ripple.value()).isEqualTo(0.3);
        assertThat(ripple.high()).isCloseTo(0.3 + Interval.Z95 * 0.03, within(1e-9));
    }

    /** A test after charging tells nothing of how the battery came in, whichever was uploaded or taken first. */
    @Test
    void onlyAnUnchargedTestTellsHowTheBatteryCameIn() {
        BatteryTest charged = test(0, FULL_V, 650.0, null, true);
        assertThat(value(of(charged), "arrival-charge")).isEmpty();
        CrankingTest sags = new CrankingTest(MONDAY, 7.5, null, 20, null);
        TestQuantities both = of(charged, test(24, LOW_V, null, null, false), sags);
        assertThat(known(both, "arrival-charge")).isLessThan(40);
        assertThat(value(both, "cranking-minimum")).as("it came in low").isEmpty();
    }

    /** A battery that nobody charged is judged from 70 % on, five points under the manuals' 75 for the voltmeter: 12.54 V. */
    @ParameterizedTest
    @CsvSource({"12.55, true", "12.50, false"})
    void anUnchargedBatteryIsJudgedFromSeventyPercentOn(double volts, boolean judged) {
        TestQuantities found = of(new BatteryTest(
                MONDAY, volts, RestVoltage.TABLE_C, 600.0, CrankingStandard.EN, null, 14.0, false, null));
        assertThat(found.judged()).isEqualTo(judged);
        assertThat(value(found, "cranking-share").isPresent()).isEqualTo(judged);
    }

    /** The ends of a loss are the furthest apart that the two charges allow. */
    @Test
    void theLossReachesFromTheNearestToTheFurthestOfBothCharges() {
        BatteryTest first = test(0, 12.7, null, null, true);
        BatteryTest second = test(48, 12.45, null, null, true);
        Interval before = value(of(first), "charge-after-recharge").orElseThrow();
        Interval after = value(of(second), "charge-after-recharge").orElseThrow();
        assertThat(value(of(first, second), "charge-lost").orElseThrow())
                .isEqualTo(new Interval(
                        before.value() - after.value(), before.low() - after.high(), before.high() - after.low()));
    }

    /** A resistance by a tester is known to 5 %. */
    @Test
    void aResistanceIsKnownToFivePercent() {
        Interval found = value(of(test(0, FULL_V, null, 5.0, true)), "resistance-by-rating")
                .orElseThrow();
        assertThat(found.standardError()).isCloseTo(0.05 * 3.5, within(1e-9));
    }

    /** Where nobody says how long it rested, a battery counts as rested for four hours. */
    @Test
    void aRestThatNobodyToldCountsAsFourHours() {
        BatteryTest untold = new BatteryTest(MONDAY, 12.4, 20, null, null, null, null, false, null);
        BatteryTest four = new BatteryTest(MONDAY, 12.4, 20, null, null, null, 4.0, false, null);
        assertThat(value(of(untold), "arrival-charge")).isEqualTo(value(of(four), "arrival-charge"));
    }
}
