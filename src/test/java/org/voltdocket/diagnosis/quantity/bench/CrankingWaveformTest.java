package org.voltdocket.diagnosis.quantity.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** A start made by hand: 12.6 V, an inrush down to 7.2 V, a plateau at 10.4 V with compressions, back within 0.3 s. */
class CrankingWaveformTest {

    private static final double BEGIN_S = 2;
    private static final double END_S = 3.2;

    private static double volts(double t, double hertz, double peakToPeak, double weak) {
        if (t < BEGIN_S) {
            return 12.6;
        }
        double since = t - BEGIN_S;
        if (t < END_S) {
            double swing = 0.5 * peakToPeak * Math.sin(2 * Math.PI * hertz * since);
            boolean weakOne = (int) (since * hertz) % 4 == 0;
            return 10.4 - 3.2 * Math.exp(-since / 0.03) + (weakOne ? weak : 1) * swing;
        }
        return 12.6 - 2.2 * Math.exp(-(t - END_S) / 0.13);
    }

    private static Map<String, Interval> measured(double rate, DoubleUnaryOperator curve) {
        Random chance = new Random(4);
        Made made =
                Made.at(rate, 8).with(Channel.MEASURED_V, t -> curve.applyAsDouble(t) + 0.005 * chance.nextGaussian());
        return BenchQuantities.course(
                        made.as(EvidenceKind.CRANKING_RECORDING).evidence(), new MeasurementContext(Facts.UNKNOWN, 20))
                .stream()
                .collect(Collectors.toMap(Measurement::quantity, Measurement::value));
    }

    private static void holds(Interval found, double truth, double near) {
        assertThat(found).isNotNull();
        assertThat(found.value()).isCloseTo(truth, within(near));
        assertThat(found.low()).isLessThanOrEqualTo(truth);
        assertThat(found.high()).isGreaterThanOrEqualTo(truth);
    }

    @ParameterizedTest
    @CsvSource({"100, 8.3", "200, 8.3", "500, 6.1", "1000, 11.7", "50, 7"})
    void theCourseOfAStartIsToldAtAnyRate(double rate, double hertz) {
        Map<String, Interval> found = measured(rate, t -> volts(t, hertz, 0.5, 1));
        holds(found.get("inrush-sag"), 5.4, 0.4);
        holds(found.get("cranking-plateau"), 10.4, 0.05);
        holds(found.get("compression-frequency"), hertz, 0.15);
        holds(found.get("compression-ripple"), 0.5, 0.05);
        // nine tenths of 2.2 V are back when exp(-t/0.13) is a tenth: 0.299 s; less than 0.8 V are missing from 0.13 s
        // on
        assertThat(found.get("recovery-time").value()).isBetween(0.1, 0.32);
    }

    @Test
    void aWeakCylinderShowsAsUnevenSwings() {
        double even = measured(500, t -> volts(t, 8, 0.6, 1))
                .get("compression-unevenness")
                .value();
        double uneven = measured(500, t -> volts(t, 8, 0.6, 0.2))
                .get("compression-unevenness")
                .value();
        assertThat(even).isLessThan(25);
        assertThat(uneven).isGreaterThan(70);
    }

    @Test
    void withoutCompressionsThereIsNoRipple() {
        assertThat(measured(200, t -> volts(t, 8, 0, 1)))
                .containsKey("cranking-plateau")
                .doesNotContainKeys("compression-ripple", "compression-frequency", "compression-unevenness");
    }

    @Test
    void aVoltageThatNeverComesBackTellsNoRecovery() {
        assertThat(measured(200, t -> t < END_S ? volts(t, 8, 0.4, 1) : 11.9)).doesNotContainKey("recovery-time");
    }

    @Test
    void aRestHasNoCourse() {
        assertThat(measured(200, t -> 12.6)).isEmpty();
    }
}
