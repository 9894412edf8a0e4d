package org.voltdocket.diagnosis.quantity.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.kernel.Interval;

/** A drive in town of a vehicle that stops its engine: started at 30 s, restarted every two minutes after 20 s of standing. */
class RestartsTest {

    private static final int SECONDS = 900;
    private static final double DRIVES_S = 31;

    private static boolean stopped(double t) {
        return t > 60 && t % 120 >= 80 && t % 120 < 100;
    }

    private static boolean cranks(double t) {
        return t >= 30 && t < DRIVES_S || t > 60 && t % 120 >= 100 && t % 120 < 100.8;
    }

    /** Least voltage of a restart: 10.0 V at 100 s and 0.1 V less each two minutes. */
    private static double least(double t) {
        return t < 40 ? 9.5 : 10.0 - 0.1 * Math.floor(t / 120);
    }

    private static double volts(double t) {
        return cranks(t) ? least(t) : stopped(t) ? 12.3 : t < 30 ? 12.6 : 14.2;
    }

    private static Made stopping(double hertz) {
        return Made.at(hertz, SECONDS)
                .with(Channel.MEASURED_V, RestartsTest::volts)
                .with(Channel.ENGINE_RPM, t -> t < 30 || stopped(t) ? 0 : cranks(t) ? 200 : 900)
                .with(Channel.SPEED, t -> t < 36 || t % 120 >= 75 && t % 120 < 102 ? 0 : 40);
    }

    /** As {@link #stopping}, but the engine goes on running. */
    private static Made refusing() {
        return Made.at(10, SECONDS)
                .with(Channel.MEASURED_V, t -> t < 30 ? 12.6 : t < DRIVES_S ? 9.5 : 14.2)
                .with(Channel.ENGINE_RPM, t -> t < 30 ? 0 : 900)
                .with(Channel.SPEED, t -> t < 36 || t % 120 >= 75 && t % 120 < 102 ? 0 : 40);
    }

    private static Made warm(Made made, double coolant, double charge) {
        return made.with(Channel.COOLANT, t -> coolant).with(Channel.REPORTED_SOC, t -> charge);
    }

    private static Map<String, Interval> of(Made made, Boolean stopStart) {
        Facts facts = new Facts(
                new Facts.BatteryFacts(Chemistry.AGM, 70.0, 700.0, null, null, null, null, null),
                new Facts.VehicleFacts(null, stopStart, null, null, null),
                null,
                null);
        return DriveQuantities.of(made.as(EvidenceKind.DRIVE_RECORDING).evidence(), new MeasurementContext(facts, 20))
                .measurements()
                .stream()
                .collect(java.util.stream.Collectors.toMap(Measurement::quantity, Measurement::value, (a, b) -> a));
    }

    /** The first start is no restart, however deep: seven restarts from 10.0 to 9.4 V, 0.6 V deeper over the drive. */
    @Test
    void restartsAreThoseAfterAStopInTraffic() {
        Map<String, Interval> found = of(stopping(20), true);
        assertThat(found.get("restart-minimum").value()).isCloseTo(9.4, within(0.001));
        assertThat(found.get("restart-trend").value()).isCloseTo(-0.6, within(0.001));
        assertThat(of(refusing(), true)).doesNotContainKeys("restart-minimum", "restart-trend");
    }

    /** A row each half second may miss the least voltage. */
    @Test
    void aSlowRecordingTellsNoLeastVoltage() {
        assertThat(of(stopping(2), true)).doesNotContainKeys("restart-minimum", "restart-trend");
    }

    /** Seven standings of 27 s, the first from 75 s on; six seconds before the first drive are too short. */
    @Test
    void standingsOfAWarmEngineThatGoesOnRunningAreRefusals() {
        assertThat(of(warm(refusing(), 90, 92), true).get("stop-refusals")).isEqualTo(Interval.exact(7));
        assertThat(of(warm(refusing(), 65, 80), true).get("stop-refusals")).isEqualTo(Interval.exact(7));
        assertThat(of(warm(stopping(20), 90, 92), true).get("stop-refusals"))
                .as("it stopped")
                .isEqualTo(Interval.exact(0));
    }

    @Test
    void whatMayKeepAnEngineRunningIsNoRefusal() {
        assertThat(Optional.ofNullable(of(warm(refusing(), 64, 92), true).get("stop-refusals")))
                .as("cold")
                .isEmpty();
        assertThat(Optional.ofNullable(of(warm(refusing(), 90, 79), true).get("stop-refusals")))
                .as("low")
                .isEmpty();
        assertThat(of(warm(refusing(), 90, 92), false)).doesNotContainKey("stop-refusals");
        assertThat(of(refusing(), true)).as("not told").doesNotContainKey("stop-refusals");
    }
}
