package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.kernel.Interval;

/** What a drive may and may not be evidence of. */
class DriveEvidenceTest {

    private static Assessment assess(Made made, ChargingControl control) {
        return Diagnosis.assess(
                new CaseInput(Driven.facts(70, control), History.NONE, List.of(made.evidence())),
                Editions.of("2026.1"));
    }

    /** The same numbers twice are one instrument: no comparison of two voltmeters is made. */
    @Test
    void aCopyIsNoSecondMeasurement() {
        double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.05, 0.5);
        DoubleUnaryOperator posts = t -> t < 60 ? 12.5 : t < 61 ? 9.7 : 13.9 + noise[(int) t];
        DriveQuantities copied = Driven.measured(Driven.volts(12.5, posts).with(Channel.REPORTED_V, posts));
        assertThat(Driven.value(copied, "identical-voltages")).isEqualTo(100);
        assertThat(Driven.find(copied, "reported-voltage-bias")).isEmpty();
        assertThat(Driven.find(copied, "gap-while-charging")).isEmpty();
        assertThat(copied.estimates()).doesNotContainKey("voltageDisagreementV");
        DriveQuantities other =
                Driven.measured(Driven.volts(12.5, posts).with(Channel.REPORTED_V, t -> posts.applyAsDouble(t) - 0.1));
        assertThat(Driven.value(other, "identical-voltages")).isZero();
        assertThat(Driven.value(other, "reported-voltage-bias")).isCloseTo(-0.1, within(0.02));
    }

    /** The vehicle's voltmeter reads 0.6 V too high, engine on or off: nothing about a cable. */
    @Test
    void aConstantAddedToOneVoltmeterIsNoResistance() {
        double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.05, 0.5);
        DoubleUnaryOperator posts = t -> t < 60 ? 12.6 : t < 61 ? 9.7 : 13.9 + noise[(int) t];
        Assessment said = assess(
                Driven.volts(12.6, posts).with(Channel.REPORTED_V, t -> posts.applyAsDouble(t) + 0.6),
                ChargingControl.CONVENTIONAL);
        assertThat(said.causes().stream()
                        .filter(c -> c.cause() == Cause.WIRING)
                        .flatMap(c -> c.weights().stream())
                        .filter(w -> w.finding().startsWith("reported-voltage-bias")))
                .isEmpty();
    }

    /** A source held at 15.9 V, or the control that commands it so steadily, is the fault, not a battery that does not fit. */
    @ParameterizedTest
    @CsvSource({"CONVENTIONAL, CHARGING_SOURCE", "MANAGED, CHARGE_CONTROL"})
    void aSourceFarTooHighIsTheFirstCause(ChargingControl control, Cause cause) {
        double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.05, 0.5);
        Assessment said = assess(Driven.volts(12.6, t -> 15.9 + noise[(int) t]), control);
        assertThat(said.causes().get(0).cause()).isEqualTo(cause);
    }

    /** 14.9 V for a whole drive at 28 °C is too high for a managed source as well. */
    @Test
    void aManagedSourceThatStaysHighIsOutside() {
        double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.02, 0.5);
        Made made = Driven.volts(12.6, t -> 14.95 + noise[(int) t]).with(Channel.AMBIENT, t -> 28);
        assertThat(assess(made, ChargingControl.MANAGED).findings()).anySatisfy(f -> {
            assertThat(f.rule()).isEqualTo("median-running-voltage");
            assertThat(f.result().id()).isEqualTo("outside");
        });
    }

    /** The source works for ten minutes and then no more. */
    @Test
    void chargingThatStopsDuringTheDriveIsMeasured() {
        double[] noise = Made.noise(new Random(2), Driven.SECONDS + 1, 0.03, 0.5);
        DriveQuantities stops =
                Driven.measured(Driven.volts(12.6, t -> (t < 660 ? 14.2 : 12.1 - 0.0003 * (t - 660)) + noise[(int) t]));
        assertThat(Driven.value(stops, "charging-stopped")).isCloseTo(540, within(10.0));
        DriveQuantities works = Driven.measured(Driven.volts(12.6, t -> 14.2 + noise[(int) t]));
        assertThat(Driven.value(works, "charging-stopped")).isZero();
        DriveQuantities pauses =
                Driven.measured(Driven.volts(12.6, t -> (t > 660 && t < 900 ? 12.1 : 14.2) + noise[(int) t]));
        assertThat(Driven.value(pauses, "charging-stopped")).isZero();
    }

    /** A sample a second misses the deepest point of a start by volts: it is no least voltage while cranking. */
    @Test
    void aPolledValueIsNoCrankingMinimum() {
        Made slow = Made.at(1, Driven.SECONDS)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.7 : t < 62 ? 7.56 : 14.1)
                .with(Channel.ENGINE_RPM, t -> t < 62 ? 0 : 1800);
        assertThat(Driven.find(Driven.measured(slow), "cranking-minimum")).isEmpty();
    }

    /** No cable has a negative resistance. */
    @Test
    void aNegativeResistanceIsNotStated() {
        double[] flow = Made.steps(new Random(4), Driven.SECONDS + 1, -25, 20, 20, 60);
        DoubleUnaryOperator posts = t -> 13.0 + 0.006 * flow[(int) t];
        DriveQuantities all = Driven.measured(Driven.clamped(12.5, posts, t -> flow[(int) t])
                .with(Channel.REPORTED_V, t -> t < 61 ? 12.5 : posts.applyAsDouble(t) - 0.030 * flow[(int) t]));
        assertThat(Driven.find(all, "harness-resistance")).isEmpty();
        assertThat(all.estimates()).doesNotContainKey("harnessResistanceMilliohm");
        Interval bias = Driven.find(all, "reported-voltage-bias").orElseThrow();
        assertThat(bias.high()).isGreaterThan(bias.low());
    }
}
