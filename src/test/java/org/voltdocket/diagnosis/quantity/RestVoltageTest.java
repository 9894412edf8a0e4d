package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Interval;

/** What holds of the tables beyond their points, which {@code PublishedTablesTest} checks against their source. */
class RestVoltageTest {

    private static final double METER_SE_V = 0.02;

    @ParameterizedTest
    @EnumSource
    void moreChargeRestsHigherAndBackAgain(Chemistry chemistry) {
        double before = 0;
        for (int charge = 0; charge <= 100; charge += 5) {
            for (double celsius : new double[] {-25, -5, 10, 25, 40}) {
                double volts = RestVoltage.at(chemistry, charge, celsius);
                Interval back = RestVoltage.charge(chemistry, volts, celsius, METER_SE_V, 0);
                assertThat(back.value()).isCloseTo(charge, within(1e-6));
                assertThat(back.low()).isLessThanOrEqualTo(charge + 1e-6);
                assertThat(back.high()).isGreaterThanOrEqualTo(charge - 1e-6);
            }
            double now = RestVoltage.at(chemistry, charge, 20);
            assertThat(now).isGreaterThan(before);
            before = now;
        }
    }

    /** A meter's error of two standard errors lies within the interval that was given for it. */
    @ParameterizedTest
    @EnumSource
    void theIntervalAllowsForTheMeter(Chemistry chemistry) {
        double volts = RestVoltage.at(chemistry, 50, 20);
        Interval read = RestVoltage.charge(chemistry, volts + 1.9 * METER_SE_V, 20, METER_SE_V, 0);
        assertThat(read.low()).isLessThan(50);
        assertThat(RestVoltage.charge(chemistry, volts, 20, 0.1, 0).low())
                .isLessThan(RestVoltage.charge(chemistry, volts, 20, 0.01, 0).low());
    }

    @Test
    void surfaceChargeWidensTheLowEndOnly() {
        Interval rested = RestVoltage.charge(Chemistry.AGM, 12.6, 20, METER_SE_V, 0);
        Interval fresh = RestVoltage.charge(Chemistry.AGM, 12.6, 20, METER_SE_V, 0.25);
        assertThat(fresh.value()).isEqualTo(rested.value());
        assertThat(fresh.high()).isEqualTo(rested.high());
        assertThat(fresh.low()).isLessThan(rested.low() - 10);
    }

    @Test
    void anUnknownChemistryIsLessSure() {
        Interval known = RestVoltage.charge(Chemistry.EFB, 12.3, 20, METER_SE_V, 0);
        Interval unknown = RestVoltage.charge(null, 12.3, 20, METER_SE_V, 0);
        assertThat(unknown.value()).isEqualTo(known.value());
        assertThat(unknown.high() - unknown.low()).isGreaterThan(known.high() - known.low());
    }

    @Test
    void theEndsHold() {
        assertThat(RestVoltage.charge(Chemistry.FLOODED, 13.4, 20, METER_SE_V, 0)
                        .value())
                .isEqualTo(100);
        assertThat(RestVoltage.charge(Chemistry.FLOODED, 10.4, 20, METER_SE_V, 0)
                        .value())
                .isZero();
    }

    /** The correction has no step where its two laws meet, at 26.7 °C and at -1.1 °C. */
    @Test
    void theTemperatureCorrectionIsSmooth() {
        for (double celsius = -30; celsius < 45; celsius += 0.1) {
            double step = RestVoltage.coldDrop(celsius) - RestVoltage.coldDrop(celsius + 0.1);
            assertThat(step).isBetween(0.0001, 0.0004);
        }
        assertThat(RestVoltage.coldDrop(RestVoltage.TABLE_C)).isZero();
    }
}
