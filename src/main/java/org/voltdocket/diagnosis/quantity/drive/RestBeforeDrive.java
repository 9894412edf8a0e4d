package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Rest voltage before a drive: the highest five second mean with the engine off before the first start, for loads only
 * pull it down. How long the vehicle stood is not in a recording, so the standard error allows for some surface charge.
 */
final class RestBeforeDrive {

    private static final int SHORTEST_STEPS = 5;
    private static final double SE_V = 0.03;

    private RestBeforeDrive() {}

    static Optional<Interval> before(DriveSignals drive) {
        int end = firstRun(drive);
        double[] off = new double[Math.max(0, end)];
        for (int k = 0; k < off.length; k++) {
            off[k] = drive.running()[k] ? Double.NaN : drive.voltage()[k];
        }
        if (Robust.count(off) < SHORTEST_STEPS) {
            return Optional.empty();
        }
        double[] blocks = DriveSignals.blocks(off, SHORTEST_STEPS);
        double high = Robust.quantile(blocks, 1);
        return Double.isNaN(high) ? Optional.empty() : Optional.of(Interval.ofStandardError(high, SE_V));
    }

    /** Step before the first start; where none was seen, before the engine first runs, 0 where it always does. */
    static int firstRun(DriveSignals drive) {
        if (!drive.starts().isEmpty()) {
            return drive.grid().stepOf(drive.starts().get(0).fromS()) - 1;
        }
        int step = 0;
        while (step < drive.running().length && !drive.running()[step]) {
            step++;
        }
        return step == drive.running().length ? 0 : step - 3;
    }
}
