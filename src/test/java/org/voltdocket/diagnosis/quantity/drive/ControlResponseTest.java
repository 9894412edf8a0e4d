package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.RestVoltage;

/** Whether control knew what it should have charged for: a battery that came in at 12.15 V, left alone all the way. */
class ControlResponseTest {

    private static final double REST_V = 12.15;
    private static final double CHARGE =
            RestVoltage.charge(Chemistry.AGM, REST_V, 20, 0.03, 0.08).value();

    private final double[] load = Made.steps(new Random(6), Driven.SECONDS + 1, -6, 6, 10, 30);

    private DriveQuantities left(double claimed, double offset) {
        return Driven.measured(Driven.clamped(REST_V, t -> 12.4, t -> load[(int) t])
                .with(Channel.REPORTED_A, t -> (t < 60 ? -0.02 : load[(int) t]) + offset)
                .with(Channel.REPORTED_SOC, t -> claimed));
    }

    /** Honest is a current whose offset surely lies within 1.5 A: by a clamp, known to 0.4 A, one of 1 A but not of 1.3. */
    @ParameterizedTest
    @CsvSource({"0, true", "1.0, true", "1.3, false", "-1.0, true", "-1.3, false", "4, false", "-4, false"})
    void controlWasToldWhereItsCurrentIsHonest(double offset, boolean told) {
        assertThat(Driven.find(left(40, offset), "uncharged-though-told").isPresent())
                .isEqualTo(told);
    }

    /** Honest is a charge within 25 points of what the rest voltage says. */
    @ParameterizedTest
    @CsvSource({"24, true", "26, false", "-24, true", "-26, false"})
    void controlWasToldWhereItsChargeIsHonest(double points, boolean told) {
        assertThat(Driven.find(left(CHARGE + points, 0), "uncharged-though-told")
                        .isPresent())
                .isEqualTo(told);
    }

    /** From a claimed charge of 75 % on a control may rest. */
    @ParameterizedTest
    @CsvSource({"74, false", "75, true", "92, true"})
    void controlMayRestWhereItsChargeClaimsSo(double claimed, boolean rests) {
        assertThat(Driven.find(left(claimed, 3), "rests-as-claimed-full").isPresent())
                .isEqualTo(rests);
    }
}
