package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Rest voltage before a drive: a high five second mean with the engine off before the first start, for loads only pull it
 * down. How long the vehicle stood is not in a recording, so the standard error allows for some surface charge.
 */
final class RestBeforeDrive {

    private static final int SHORTEST_STEPS = 5;
    private static final double SE_V = 0.03;
    /** Standard error by the resolution, in its steps (a calm value may lie anywhere within one). */
    private static final double COARSE = 0.3;
    /** Steps that a start takes, and those before an engine whose start was not seen that may belong to it (ours). */
    private static final int START_STEPS = 10;

    private static final int UNSEEN_STEPS = 3;
    /** Rows between which such a start may lie: the voltage between them is a mixture (ours). */
    private static final double UNSEEN_ROWS = 1.5;
    /** Quantile of the five second means: the very highest may hold something else (ours). */
    private static final double MOST = 0.9;

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
        double high = Robust.quantile(blocks, MOST);
        return Double.isNaN(high)
                ? Optional.empty()
                : Optional.of(Interval.ofStandardError(high, Math.hypot(SE_V, COARSE * drive.resolutionV())));
    }

    /** Step before the first start; where none was seen, before the engine first runs, 0 where it always does. */
    static int firstRun(DriveSignals drive) {
        boolean[] running = drive.running();
        int step = 0;
        while (step < running.length && !running[step]) {
            step++;
        }
        if (step == running.length && drive.starts().isEmpty()) {
            return 0;
        }
        int start = drive.starts().isEmpty()
                ? running.length
                : drive.grid().stepOf(drive.starts().get(0).fromS()) - 1;
        if (start <= step + START_STEPS) {
            return start;
        }
        double rows = Math.ceil(UNSEEN_ROWS * drive.grid().rowS() / drive.grid().stepS());
        return step - UNSEEN_STEPS - (int) rows;
    }
}
