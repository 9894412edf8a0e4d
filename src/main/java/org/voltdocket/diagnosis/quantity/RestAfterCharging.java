package org.voltdocket.diagnosis.quantity;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Rest voltage after a drive in which the battery was charged, V: at the end of the drive recording, or in a battery test of
 * the hours after it. Charge lifts an empty battery above its table within minutes; a lost cell keeps it about 2 V below.
 */
public final class RestAfterCharging {

    /** Posts at this voltage or above charge the battery, V (common practice). */
    private static final double CHARGING_V = 13.2;
    /** Charging for this long lifts an empty battery into its table, s (ours). */
    private static final double LONG_ENOUGH_S = 600;
    /** Length of the rest that the voltage is taken from, after as long a rest before it, s (ours). */
    private static final int REST_S = 30;
    /** A test later than this after a drive says nothing about its charge, h (ours). */
    private static final long MOST_HOURS = 12;

    private static final double SE_V = 0.05;

    private RestAfterCharging() {}

    /**
     * @param evidence in canonical order
     * @param drives signals of the drive recordings, in canonical order
     */
    public static List<Measurement> of(List<Evidence> evidence, Map<Evidence, DriveSignals> drives) {
        List<Measurement> out = new ArrayList<>();
        drives.forEach((item, drive) -> {
            if (chargedFor(drive) < LONG_ENOUGH_S) {
                return;
            }
            double rest = restAtEnd(drive);
            if (!Double.isNaN(rest)) {
                out.add(measurement(item, rest));
            }
            drive.grid()
                    .recording()
                    .startedAt()
                    .ifPresent(at -> evidence.stream()
                            .filter(test -> test.reading() instanceof BatteryTest b && follows(b, at, drive))
                            .forEach(
                                    test -> out.add(measurement(test, ((BatteryTest) test.reading()).restVoltageV()))));
        });
        return out;
    }

    private static Measurement measurement(Evidence item, double volts) {
        return Measurement.of("rest-after-driving", item, Interval.ofStandardError(volts, SE_V));
    }

    private static boolean follows(BatteryTest test, OffsetDateTime startedAt, DriveSignals drive) {
        OffsetDateTime end =
                startedAt.plusSeconds((long) drive.grid().recording().durationS());
        return !Boolean.TRUE.equals(test.chargedBefore())
                && test.takenAt().isAfter(end)
                && test.takenAt().isBefore(end.plusHours(MOST_HOURS));
    }

    /** Time with a running engine at charging voltage, s. */
    private static double chargedFor(DriveSignals drive) {
        double seconds = 0;
        for (int k = 0; k < drive.voltage().length; k++) {
            seconds += drive.steady(k) && drive.voltage()[k] >= CHARGING_V
                    ? drive.grid().stepS()
                    : 0;
        }
        return seconds;
    }

    /** Voltage at the end of the recording, the engine off for a minute or more; NaN without such a rest. */
    private static double restAtEnd(DriveSignals drive) {
        int end = drive.running().length;
        int stopped = end;
        while (stopped > 0 && !drive.running()[stopped - 1] && !drive.nearStart(stopped - 1)) {
            stopped--;
        }
        int rest = (int) (REST_S / drive.grid().stepS());
        return stopped == 0 || end - stopped < 2 * rest
                ? Double.NaN
                : Robust.median(Arrays.copyOfRange(drive.voltage(), end - rest, end));
    }
}
