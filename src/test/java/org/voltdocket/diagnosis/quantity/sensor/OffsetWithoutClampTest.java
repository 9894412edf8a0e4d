package org.voltdocket.diagnosis.quantity.sensor;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** The offset of a sensor without a clamp by two ways, on drives whose voltage an equivalent circuit made, second by second. */
class OffsetWithoutClampTest {

    private static final int DRIVEN = 1500;
    private static final int PARKED = 1800;
    private static final double OFFSET = 3;

    /** True current: loads and charge while driving, 6 A more just parked than asleep. */
    private static double[] current(double asleep) {
        double[] out = Made.steps(new Random(12), PARKED + 1, -30, 12, 10, 60);
        for (int t = 0; t <= PARKED; t++) {
            out[t] = t < 20 ? -5 : t < 22 ? -200 : t < DRIVEN ? out[t] : t < DRIVEN + 40 ? asleep - 6 : asleep;
        }
        return out;
    }

    private static double[] volts(double[] amperes) {
        BatteryCircuit circuit = new BatteryCircuit(new double[PARKED + 1], amperes, 1, 0.012, 1);
        circuit.run(circuit.start, false);
        double[] out = new double[PARKED + 1];
        for (int t = 0; t <= PARKED; t++) {
            out[t] = -circuit.left[t];
        }
        return out;
    }

    private static OffsetWithoutClamp ways(double asleep) {
        double[] amperes = current(asleep);
        double[] noise = Made.noise(new Random(13), PARKED + 1, 0.006, 0.5);
        double[] volts = volts(amperes);
        Made made = Made.at(1, PARKED)
                .with(Channel.MEASURED_V, t -> volts[(int) t] + noise[(int) t])
                .with(Channel.ENGINE_RPM, t -> t < 22 || t > DRIVEN ? 0 : 1500)
                .with(Channel.REPORTED_A, t -> amperes[(int) t] + OFFSET);
        return OffsetWithoutClamp.of(
                new DriveSignals(made.recording(), 20), new MeasurementContext(new Facts(null, null, null, null), 20));
    }

    @Test
    void bothWaysAndTheirSumHoldTheTruth() {
        OffsetWithoutClamp ways = ways(-0.03);
        assertThat(ways.fit()).hasValueSatisfying(OffsetWithoutClampTest::holdsTheTruth);
        assertThat(ways.asleep()).hasValueSatisfying(OffsetWithoutClampTest::holdsTheTruth);
        assertThat(ways.together()).hasValueSatisfying(OffsetWithoutClampTest::holdsTheTruth);
        assertThat(ways.together().orElseThrow().standardError())
                .isLessThan(ways.fit().orElseThrow().standardError());
        assertThat(ways.apart())
                .hasValueSatisfying(
                        a -> assertThat(a.low() <= 0 && a.high() >= 0).isTrue());
    }

    private static void holdsTheTruth(Interval found) {
        assertThat(found.low()).isLessThan(OFFSET);
        assertThat(found.high()).isGreaterThan(OFFSET);
    }

    /** A vehicle that goes on drawing 5 A asleep: the ways part. */
    @Test
    void aVehicleThatIsNotAsleepShowsInTheirDifference() {
        OffsetWithoutClamp ways = ways(-5);
        Interval apart = ways.apart().orElseThrow();
        assertThat(apart.low()).isPositive();
        assertThat(apart.value()).isBetween(3.0, 6.5);
    }

    @Test
    void withoutAReportedCurrentNothingIsSaid() {
        Made bare = Made.at(1, 600).with(Channel.MEASURED_V, t -> 12.4 + 0.3 * Math.sin(t / 40));
        OffsetWithoutClamp ways = OffsetWithoutClamp.of(
                new DriveSignals(bare.recording(), 20), new MeasurementContext(new Facts(null, null, null, null), 20));
        assertThat(ways.fit()).isEmpty();
        assertThat(ways.asleep()).isEmpty();
        assertThat(ways.together()).isEmpty();
        assertThat(ways.apart()).isEmpty();
    }
}
