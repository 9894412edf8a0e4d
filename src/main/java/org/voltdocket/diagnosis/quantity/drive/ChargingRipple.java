package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Ripple of the charging voltage, where the recording is fast enough to see it.
 *
 * <p>An open diode adds a component at a sixth of the ripple frequency (common practice). With six pole pairs, a belt
 * ratio of 2.5 and 750 to 900 1/min at idle that is 190 to 225 Hz, so by Nyquist and Shannon 450 samples a second are the
 * least; the full ripple needs six times that.
 */
final class ChargingRipple {

    /** Samples a second from which an open diode shows at idle. */
    static final double NEEDED_HZ = 450;

    private static final double WINDOW_S = 0.25;
    private static final int FEWEST_WINDOWS = 40;
    private static final int MOST_WINDOWS = 400;
    private static final double RELATIVE_SE = 0.1;

    private ChargingRipple() {}

    static void measure(DriveContext notes) {
        Recording recording = notes.drive.grid().recording();
        double hertz = (recording.rows() - 1) / recording.durationS();
        if (hertz >= NEEDED_HZ) {
            ripple(notes, recording);
        }
    }

    /** Median over short windows of the spread of their samples, 2.5 to 97.5 %, as peak to peak of a sine. */
    private static void ripple(DriveContext notes, Recording recording) {
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        double[] spreads = new double[MOST_WINDOWS];
        int n = 0;
        double every = Math.max(WINDOW_S, recording.durationS() / MOST_WINDOWS);
        int row = 0;
        for (int window = 0; n < MOST_WINDOWS && row < time.length; window++) {
            double from = time[0] + window * every;
            while (row < time.length && time[row] < from) {
                row++;
            }
            int to = row;
            while (to < time.length && time[to] < from + WINDOW_S) {
                to++;
            }
            if (to - row >= 20 && notes.drive.steady(notes.drive.grid().stepOf(from))) {
                double[] part = new double[to - row];
                for (int k = row; k < to; k++) {
                    part[k - row] = v[k];
                }
                // the middle 95 % of a sine span sin(0.475 π) of it
                spreads[n++] =
                        (Robust.quantile(part, 0.975) - Robust.quantile(part, 0.025)) / StrictMath.sin(0.475 * Math.PI);
            }
            row = to;
        }
        if (n >= FEWEST_WINDOWS) {
            double[] told = java.util.Arrays.copyOf(spreads, n);
            double peak = Robust.median(told);
            notes.say("ripple-in-drive", Interval.ofStandardError(peak, RELATIVE_SE * peak + 0.005));
        }
    }
}
