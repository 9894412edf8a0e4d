package org.voltdocket.diagnosis.cause;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.EngineStartDetector;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * Compares test records with recordings of the same hour. All limits are ours and wide: differences that a load, a warm
 * engine or two voltmeters explain are no contradiction.
 */
final class ConcurrentReadings {

    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration HALF_HOUR = Duration.ofMinutes(30);
    private static final Duration QUARTER = Duration.ofMinutes(15);
    /** A source tested at this can charge, V. */
    private static final double CHARGES_V = 13.8;
    /** A drive that never passes this was never charged, V. */
    private static final double NEVER_CHARGED_V = 12.8;

    private static final double SHORTEST_DRIVE_S = 600;
    /** Rest voltages half an hour apart that no load of a parked car explains, V. */
    private static final double REST_V = 0.8;

    private static final double LEAST_REST_S = 5;
    /** Least voltages of two starts half an hour apart, V. */
    private static final double CRANKING_V = 2.0;
    /** Rest voltages of two tests a quarter of an hour apart, neither charged in between, V. */
    private static final double TWO_TESTS_V = 0.5;

    private ConcurrentReadings() {}

    /**
     * The contradiction between two items, as its sentence is named; empty where both can be true.
     *
     * @param one before {@code other} in canonical order, so a record before a recording
     */
    static Optional<String> between(Evidence one, Evidence other, Facts facts) {
        if (one.reading() instanceof BatteryTest a && other.reading() instanceof BatteryTest b) {
            return when(restsDisagree(a, b), "rest-voltages-disagree");
        }
        if (!(other.reading() instanceof Recording recording)) {
            return Optional.empty();
        }
        if (one.reading() instanceof ChargingTest test) {
            boolean held = facts.vehicle().chargingControl() == ChargingControl.CONVENTIONAL;
            return when(held && neverCharged(test, recording), "charging-test-against-drive");
        }
        if (one.reading() instanceof BatteryTest test) {
            return when(otherRest(test, recording), "rest-voltage-against-recording");
        }
        if (one.reading() instanceof CrankingTest test) {
            return when(otherStart(test, recording), "cranking-test-against-recording");
        }
        return Optional.empty();
    }

    private static Optional<String> when(boolean contradicts, String id) {
        return contradicts ? Optional.of(id) : Optional.empty();
    }

    private static boolean restsDisagree(BatteryTest a, BatteryTest b) {
        boolean alike = Boolean.TRUE.equals(a.chargedBefore()) == Boolean.TRUE.equals(b.chargedBefore());
        boolean close = Duration.between(a.takenAt(), b.takenAt()).abs().compareTo(QUARTER) <= 0;
        return alike && close && Math.abs(a.restVoltageV() - b.restVoltageV()) > TWO_TESTS_V;
    }

    /** A conventional regulator holds its voltage over a whole drive; a managed one may rest, which contradicts nothing. */
    private static boolean neverCharged(ChargingTest test, Recording drive) {
        double best = Math.max(value(test.idleVoltageV()), value(test.loadedVoltageV()));
        boolean asked = best >= CHARGES_V
                && drive.kind() == EvidenceKind.DRIVE_RECORDING
                && drive.durationS() >= SHORTEST_DRIVE_S
                && near(test.takenAt(), drive, HOUR);
        if (!asked) {
            return false;
        }
        double[] volts = Robust.movingMean(Grid.of(drive, 1).voltage(), 5);
        return Robust.quantile(volts, 1) < NEVER_CHARGED_V;
    }

    private static double value(Double volts) {
        return volts == null ? Double.NEGATIVE_INFINITY : volts;
    }

    /** Loads pull a parked car's battery down, nothing lifts it: both ways count, for a test can be as wrong as a file. */
    private static boolean otherRest(BatteryTest test, Recording recording) {
        boolean rests = recording.kind() == EvidenceKind.DRIVE_RECORDING
                || recording.kind() == EvidenceKind.STANDING_RECORDING
                || recording.kind() == EvidenceKind.CRANKING_RECORDING;
        OffsetDateTime start = recording.startedAt().orElse(null);
        if (!rests || start == null || Boolean.TRUE.equals(test.chargedBefore())) {
            return false;
        }
        Duration before = Duration.between(test.takenAt(), start);
        if (before.abs().compareTo(HALF_HOUR) > 0) {
            return false;
        }
        double rest = restBeforeStart(recording);
        return !Double.isNaN(rest) && Math.abs(rest - test.restVoltageV()) > REST_V;
    }

    private static double restBeforeStart(Recording recording) {
        Grid grid = Grid.of(recording, 1);
        double until = recording.kind() == EvidenceKind.STANDING_RECORDING
                ? Math.min(60, recording.durationS())
                : EngineStartDetector.in(grid).stream()
                        .findFirst()
                        .map(start -> start.fromS() - grid.startS() - 1)
                        .orElse(0.0);
        int steps = (int) (until / grid.stepS());
        return until < LEAST_REST_S || steps < 1
                ? Double.NaN
                : Robust.median(Arrays.copyOf(grid.voltage(), Math.min(steps, grid.steps())));
    }

    private static boolean otherStart(CrankingTest test, Recording recording) {
        if (recording.kind() != EvidenceKind.CRANKING_RECORDING || !near(test.takenAt(), recording, HALF_HOUR)) {
            return false;
        }
        return EngineStartDetector.in(Grid.of(recording, 1)).stream()
                .map(EngineStart::minimumV)
                .findFirst()
                .filter(least -> Math.abs(least - test.minimumVoltageV()) > CRANKING_V)
                .isPresent();
    }

    private static boolean near(OffsetDateTime at, Recording recording, Duration most) {
        return recording
                .startedAt()
                .filter(start -> !at.isBefore(start.minus(most)))
                .filter(start -> !at.isAfter(start.plus(most).plusSeconds((long) recording.durationS())))
                .isPresent();
    }
}
