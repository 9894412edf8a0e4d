package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/**
 * Offset of the current sensor while the vehicle sleeps within a drive recording, A.
 *
 * <p>Asleep is told by the current alone: engine off, loads fallen off by 1.5 A or more since it was switched off, and
 * then steady; or engine off and steady for minutes, which bounds it less closely. Makers allow 10 to 50 mA asleep; up to 1.5 A is taken for possible so soon (ours).
 */
public final class SleepingSensorOffset {

    /** Least time that the reading stays put, steps. */
    private static final int STEADY_STEPS = 45;

    private static final double STEADY_A = 0.3;
    /** Loads that fall off when a vehicle falls asleep, A at least (ours). */
    private static final double FALLS_A = 1.5;

    /** Least time of a steady reading that needs no loads to have fallen off, steps (ours). */
    private static final int STILL_STEPS = 150;
    /** What such a vehicle takes usually and at most: some of its units may be awake, A (ours). */
    private static final double STILL_DRAIN_A = 0.5;

    private static final double MOST_STILL_DRAIN_A = 3;
    private static final double USUAL_DRAIN_A = 0.1;
    private static final double MOST_DRAIN_A = 1.5;
    /** Quantisation and noise of the mean, A (ours). */
    private static final double READING_A = 0.05;

    private SleepingSensorOffset() {}

    /** Empty where no stretch of the drive shows the vehicle asleep. */
    public static Optional<Interval> of(DriveSignals drive) {
        double[] reported = drive.reportedA();
        if (reported == null) {
            return Optional.empty();
        }
        double found = Double.NaN;
        double still = Double.NaN;
        int from = 0;
        for (int k = 0; k <= reported.length; k++) {
            if (k == reported.length || drive.running()[k] || drive.nearStart(k)) {
                double level = asleep(reported, from, k);
                found = Double.isNaN(found) || level > found ? level : found;
                double long_ = still(reported, from, k);
                still = Double.isNaN(still) || long_ > still ? long_ : still;
                from = k + 1;
            }
        }
        if (Double.isNaN(found)) {
            return Double.isNaN(still) ? Optional.empty() : Optional.of(bound(still));
        }
        return Optional.of(
                new Interval(found + USUAL_DRAIN_A, found - 2 * READING_A, found + MOST_DRAIN_A + 2 * READING_A));
    }

    /** A vehicle that stands still for minutes with a steady current sleeps, or has some units awake. */
    private static Interval bound(double level) {
        return new Interval(level + STILL_DRAIN_A, level - 2 * READING_A, level + MOST_STILL_DRAIN_A + 2 * READING_A);
    }

    /** Highest level that an engine-off stretch holds for minutes. */
    private static double still(double[] reported, int from, int to) {
        double best = Double.NaN;
        for (int at = from; at + STILL_STEPS <= to; at += STILL_STEPS / 3) {
            double[] part = Arrays.copyOfRange(reported, at, at + STILL_STEPS);
            double level = Robust.median(part);
            boolean steady = Robust.count(part) > STILL_STEPS / 2
                    && Robust.quantile(part, 0.95) - Robust.quantile(part, 0.05) < 2 * STEADY_A;
            best = steady && !(best >= level) ? level : best;
        }
        return best;
    }

    /** Level of the steady end of an engine-off stretch, or of its steady start where a later load shows it was asleep. */
    private static double asleep(double[] reported, int from, int to) {
        int n = to - from;
        if (n < STEADY_STEPS + 5) {
            return Double.NaN;
        }
        double[] stretch = Arrays.copyOfRange(reported, from, to);
        double low = Robust.quantile(stretch, 0.05);
        double best = Double.NaN;
        for (int at = 0; at + STEADY_STEPS <= n; at += STEADY_STEPS / 3) {
            double[] part = Arrays.copyOfRange(stretch, at, at + STEADY_STEPS);
            double level = Robust.median(part);
            boolean steady = Robust.count(part) > STEADY_STEPS / 2
                    && Robust.quantile(part, 0.95) - Robust.quantile(part, 0.05) < 2 * STEADY_A;
            if (steady && level - low > FALLS_A && !(best >= level)) {
                best = level;
            }
        }
        return best;
    }
}
