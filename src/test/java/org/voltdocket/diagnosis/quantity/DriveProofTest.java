package org.voltdocket.diagnosis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Methods;
import org.voltdocket.kernel.Interval;

/** What a drive recording proves, on drives made so that the truth is known. */
class DriveProofTest {

    private static final int SECONDS = 1200;
    private static final Facts FACTS = new Facts(
            new Facts.BatteryFacts(Chemistry.AGM, 70.0, 700.0, null, null, null, null, null),
            new Facts.VehicleFacts(ChargingControl.MANAGED, null, null, null, null),
            null,
            null);

    private final double[] current = Made.steps(new Random(4), SECONDS + 1, -25, 20, 20, 60);
    private final double[] level = Made.steps(new Random(5), SECONDS + 1, -0.4, 0.9, 40, 120);

    private double amperes(double t) {
        return t < 25 ? -0.02 : t < 26 ? -300 : current[(int) t];
    }

    private double volts(double t) {
        return t < 25 ? 12.5 : t < 26 ? 9.9 : 13.0 + level[(int) t] + 0.006 * amperes(t);
    }

    private static DriveQuantities measured(Made made) {
        return DriveQuantities.of(made.evidence(), new Reference(FACTS, 20, new Methods(2, 2, 2)));
    }

    private static Optional<Interval> value(DriveQuantities all, String quantity) {
        return all.measurements().stream()
                .filter(m -> m.quantity().equals(quantity))
                .map(Measurement::value)
                .findFirst();
    }

    private Made drive() {
        return Made.at(5, SECONDS)
                .with(Channel.MEASURED_V, this::volts)
                .with(Channel.MEASURED_A, this::amperes)
                .with(Channel.ENGINE_RPM, t -> t < 26 ? 0 : 1800)
                .with(Channel.SPEED, t -> t < 60 ? 0 : 50);
    }

    private DriveQuantities reporting(double bias, double gain, double ohm) {
        return measured(drive().with(Channel.REPORTED_V, t -> 13 + bias + gain * (volts(t) - 13) + ohm * amperes(t)));
    }

    @Test
    void anHonestVoltageACableAndALyingOneAreToldApart() {
        DriveQuantities honest = reporting(0, 1, 0);
        assertThat(value(honest, "reported-voltage-bias/2").orElseThrow().value())
                .isCloseTo(0, within(0.02));
        assertThat(value(honest, "harness-resistance/2").orElseThrow().high()).isLessThan(3);
        DriveQuantities cable = reporting(0.05, 1, 0.040);
        assertThat(value(cable, "harness-resistance/2").orElseThrow().value()).isCloseTo(40, within(2.0));
        assertThat(value(cable, "harness-by-steps/1").orElseThrow().value()).isCloseTo(40, within(4.0));
        assertThat(value(cable, "reported-voltage-bias/2").orElseThrow().value())
                .isCloseTo(0.05, within(0.03));
        DriveQuantities lying = reporting(-0.4, 0.8, 0);
        assertThat(value(lying, "reported-voltage-gain/1").orElseThrow().value())
                .isCloseTo(0.8, within(0.02));
        assertThat(value(lying, "reported-voltage-bias/2").orElseThrow().value())
                .isCloseTo(-0.4, within(0.03));
        assertThat(value(lying, "harness-resistance/2").orElseThrow().high()).isLessThan(4);
    }

    @Test
    void resistanceComesFromAStartAndFromLoadSteps() {
        Random chance = new Random(9);
        double[] load = Made.steps(chance, SECONDS + 1, -40, -5, 2, 10);
        Made made = Made.at(20, SECONDS)
                .with(Channel.MEASURED_A, t -> t < 25 ? -0.02 : t < 26.5 ? -250 + 90 * Math.sin(30 * t) : load[(int) t])
                .with(
                        Channel.MEASURED_V,
                        t -> t < 25 ? 12.6 : 12.6 + 0.0055 * (t < 26.5 ? -250 + 90 * Math.sin(30 * t) : load[(int) t]))
                .with(Channel.ENGINE_RPM, t -> t < 26.5 ? 0 : 900);
        DriveQuantities all = measured(made);
        assertThat(value(all, "resistance-by-starts/1").orElseThrow().value()).isCloseTo(5.5, within(0.2));
        assertThat(value(all, "resistance-by-steps/1").orElseThrow().value()).isCloseTo(5.5, within(0.2));
        assertThat(value(all, "resistance-by-rating/2").orElseThrow().value()).isCloseTo(3.85, within(0.15));
        assertThat(all.estimates()).containsKey("internalResistanceMilliohm");
    }

    @Test
    void chargeFallsToStartsAndKilometres() {
        double mean = 0;
        for (int t = 0; t <= SECONDS; t++) {
            mean += amperes(t) / (SECONDS + 1);
        }
        double ah = mean * SECONDS / 3600;
        DriveQuantities all = measured(drive());
        Interval perStart = value(all, "charge-per-start/1").orElseThrow();
        assertThat(perStart.low()).isLessThan(ah);
        assertThat(perStart.high()).isGreaterThan(ah);
        double km = 50.0 * (SECONDS - 60) / 3600;
        assertThat(value(all, "charge-per-100-km/1").orElseThrow().value())
                .isCloseTo(100 * perStart.value() / km, within(1e-6 + Math.abs(perStart.value())));
    }

    /** Five hundred samples a second show 150 mV at 193 Hz as 300 mV peak to peak; five say that they cannot. */
    @Test
    void rippleIsSeenWhereTheSamplingAllowsIt() {
        Made fast = Made.at(500, 200)
                .with(
                        Channel.MEASURED_V,
                        t -> t < 8 ? 12.6 : t < 9 ? 10 : 14.2 + 0.15 * Math.sin(2 * Math.PI * 193 * t));
        assertThat(value(measured(fast), "ripple-in-drive/1").orElseThrow().value())
                .isCloseTo(0.30, within(0.02));
        DriveQuantities slow = measured(drive());
        assertThat(value(slow, "ripple-in-drive/1")).isEmpty();
        assertThat(value(slow, "sampling-rate/1").orElseThrow().value()).isCloseTo(5, within(0.01));
    }

    @Test
    void aSourceIsToldByWhatAsksItToLift() {
        Made made = Made.at(2, SECONDS)
                .with(Channel.MEASURED_V, t -> t < 20 ? 12.5 : t < 21 ? 9.9 : t < 200 ? 14.4 : slowing(t) ? 14.9 : 12.9)
                .with(Channel.ENGINE_RPM, t -> t < 21 ? 0 : 1800)
                .with(Channel.COOLANT, t -> 10 + t / 6)
                .with(Channel.SPEED, t -> t < 200 ? 30 : slowing(t) ? 80 - 3 * ((t % 60) - 40) : 80);
        DriveQuantities all = measured(made);
        assertThat(value(all, "lift-when-cold/1").orElseThrow().value()).isCloseTo(14.4, within(0.05));
        assertThat(value(all, "rise-when-slowing/1").orElseThrow().value()).isCloseTo(2.0, within(0.1));
    }

    private static boolean slowing(double t) {
        return t >= 200 && t % 60 >= 40;
    }

    private static DriveQuantities asked(double reportedSoc, double volts, double offset) {
        double[] load = Made.steps(new Random(6), SECONDS + 1, -6, 6, 10, 30);
        return measured(Made.at(2, SECONDS)
                .with(Channel.MEASURED_V, t -> t < 60 ? 12.15 : t < 61 ? 9.7 : volts)
                .with(Channel.MEASURED_A, t -> t < 60 ? -0.02 : load[(int) t])
                .with(Channel.REPORTED_A, t -> (t < 60 ? -0.02 : load[(int) t]) + offset)
                .with(Channel.REPORTED_SOC, t -> reportedSoc)
                .with(Channel.ENGINE_RPM, t -> t < 61 ? 0 : 1800)
                .with(Channel.SPEED, t -> t < 70 ? 0 : 60));
    }

    @Test
    void controlIsJudgedByWhatItsOwnSensorSays() {
        DriveQuantities told = asked(40, 12.4, 0);
        assertThat(value(told, "uncharged-though-told/1").orElseThrow().value()).isGreaterThan(60);
        assertThat(value(told, "rests-as-claimed-full/1")).isEmpty();
        DriveQuantities misled = asked(92, 12.4, 4);
        assertThat(value(misled, "uncharged-though-told/1")).isEmpty();
        assertThat(value(misled, "rests-as-claimed-full/1").orElseThrow().value())
                .isGreaterThan(60);
        DriveQuantities charged = asked(40, 14.3, 0);
        assertThat(value(charged, "uncharged-though-told/1").orElseThrow().value())
                .isLessThan(5);
    }
}
