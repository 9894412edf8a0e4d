package org.voltdocket.diagnosis.quantity.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.DriveSignals;

/** A sensor with a known offset and gain beside a clamp, the true current known for it was made. */
class ClampComparisonTest {

    private static final int SECONDS = 900;
    /** What a clamp may be wrong by, standard errors: 0.2 A and 1.5 % (common practice). */
    private static final double CLAMP_ZERO_A = 0.2;

    private static final double CLAMP_SCALE = 0.015;

    private static ClampComparison.Result measured(Random chance, double offset, double gain, boolean clampErrs) {
        double[] truth = Made.steps(chance, SECONDS + 1, -25, 20, 15, 90);
        double zero = clampErrs ? CLAMP_ZERO_A * chance.nextGaussian() : 0;
        double scale = clampErrs ? 1 + CLAMP_SCALE * chance.nextGaussian() : 1;
        double[] clampNoise = Made.noise(chance, SECONDS + 1, 0.15, 0.5);
        double[] sensorNoise = Made.noise(chance, SECONDS + 1, 0.3, 0.8);
        Made made = Made.at(1, SECONDS)
                .with(Channel.MEASURED_V, t -> t < 20 ? 12.5 : t < 22 ? 10 : 13.2 + 0.01 * truth[(int) t])
                .with(Channel.MEASURED_A, t -> zero + scale * truth[(int) t] + clampNoise[(int) t])
                .with(Channel.REPORTED_A, t -> offset + gain * truth[(int) t] + sensorNoise[(int) t]);
        return ClampComparison.byClamp(new DriveSignals(made.recording(), 20)).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "4.1, 1", "-6, 1", "2, 0.8", "-0.5, 1.3"})
    void offsetAndGainComeBack(double offset, double gain) {
        ClampComparison.Result found = measured(new Random(8), offset, gain, false);
        assertThat(found.offsetA().value()).isCloseTo(offset, within(0.25));
        assertThat(found.gain().value()).isCloseTo(gain, within(0.03));
        assertThat(found.offsetA().low()).isLessThan(offset);
        assertThat(found.offsetA().high()).isGreaterThan(offset);
    }

    /** The 95 % interval holds the truth in 90 to 99 of 100 cases, the clamp's own errors and correlated noise included. */
    @Test
    void theIntervalsCoverTheTruth() {
        int offsets = 0;
        int gains = 0;
        for (int draw = 0; draw < 300; draw++) {
            Random chance = new Random(7000 + draw);
            double offset = -5 + 10 * chance.nextDouble();
            ClampComparison.Result found = measured(chance, offset, 1, true);
            offsets +=
                    found.offsetA().low() <= offset && offset <= found.offsetA().high() ? 1 : 0;
            gains += found.gain().low() <= 1 && 1 <= found.gain().high() ? 1 : 0;
        }
        assertThat(offsets / 300.0).as("offset").isBetween(0.90, 0.99);
        assertThat(gains / 300.0).as("gain").isBetween(0.90, 0.995);
    }

    @Test
    void withoutAClampOrWithLessThanAMinuteNothingIsSaid() {
        Made bare = Made.at(1, 300).with(Channel.MEASURED_V, t -> 14.1).with(Channel.REPORTED_A, t -> 3);
        assertThat(ClampComparison.byClamp(new DriveSignals(bare.recording(), 20)))
                .isEmpty();
        Made brief = Made.at(1, 45)
                .with(Channel.MEASURED_V, t -> 14.1)
                .with(Channel.MEASURED_A, t -> t % 7)
                .with(Channel.REPORTED_A, t -> t % 7);
        assertThat(ClampComparison.byClamp(new DriveSignals(brief.recording(), 20)))
                .isEmpty();
    }

    /** A current that hardly moves tells the offset and no gain. */
    @Test
    void aCurrentThatHardlyMovesTellsNoGain() {
        double[] sway = Made.noise(new Random(3), SECONDS + 1, 0.05, 0.5);
        double[] noise = Made.noise(new Random(6), SECONDS + 1, 0.5, 0);
        Made still = Made.at(1, SECONDS)
                .with(Channel.MEASURED_V, t -> 12.5)
                .with(Channel.MEASURED_A, t -> sway[(int) t])
                .with(Channel.REPORTED_A, t -> 3 + sway[(int) t] + noise[(int) t]);
        ClampComparison.Result found =
                ClampComparison.byClamp(new DriveSignals(still.recording(), 20)).orElseThrow();
        assertThat(found.gain()).isNull();
        assertThat(found.offsetA().value()).isCloseTo(3, within(0.2));
    }
}
