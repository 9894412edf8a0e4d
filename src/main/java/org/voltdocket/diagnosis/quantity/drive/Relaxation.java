package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * Remaining relaxation of the rest voltage, extrapolated from the recorded rest.
 *
 * <p>A battery relaxes by exponentials whose time constants are spread over decades, so its voltage runs straight over
 * the logarithm of time: 0.12 to 0.26 V a decade in the published rests (vmehra813/lead_acid_battery_data), less from
 * decade to decade. What is left lies between none and as much a decade until a day has passed; the middle is taken.
 */
final class Relaxation {

    /** What a day's rest leaves does not matter, s. */
    private static final double DAY_S = 86_400;
    /** Volts a decade where only the speed is known (published: 0.12 to 0.26). */
    static final double PER_DECADE_V = 0.2;

    private static final int FEWEST_STEPS = 40;
    /** A clamp that shows less shows a sleeping vehicle, A. */
    private static final double ASLEEP_A = 0.25;
    /** A load that comes or goes moves the voltage by more within a second, V (ours). */
    private static final double JUMP_V = 0.03;

    /** Seconds after the engine stopped that no fit uses. */
    private static final int SWITCHED_OFF_STEPS = 5;

    private static final double LEVEL_V = 0.06;
    private static final double METER_V = 0.01;
    /** Most surface charge that a rest without a visible slope may still hide, V (common practice: vehicles arrive rested). */
    private static final double HIDDEN_V = 0.08;

    /**
     * @param voltage rested voltage, V
     * @param left what was taken off the last one to get there, V; positive after charging
     * @param hidden how much more may still be surface charge, V
     */
    record Rested(Interval voltage, Interval left, double hidden) {}

    private Relaxation() {}

    /**
     * Before the first start: how long the vehicle stood is not known, the slope tells it where it can be seen.
     *
     * @param highest rest voltage as seen
     * @param end step of the first start
     * @param full rest voltage of a charged battery, V
     */
    static Optional<Rested> before(DriveSignals drive, Optional<Interval> highest, int end, double full) {
        return highest.map(high -> {
            RobustLine line = plateau(drive, end, high.value(), full);
            if (line == null) {
                return new Rested(high, Interval.exact(0), HIDDEN_V);
            }
            double steepest = Math.abs(line.slope()) + Interval.Z95 * line.slopeSe();
            if (Math.abs(line.slope()) <= 2 * Interval.Z95 * line.slopeSe()) {
                double most = PER_DECADE_V * decadesLeft(PER_DECADE_V / StrictMath.log(10) / steepest);
                return new Rested(high, Interval.exact(0), Math.min(HIDDEN_V, most));
            }
            double stood = PER_DECADE_V / StrictMath.log(10) / Math.abs(line.slope());
            double most = -Math.signum(line.slope()) * PER_DECADE_V * decadesLeft(stood);
            return rested(high.value(), most, high.standardError());
        });
    }

    /**
     * The longest calm stretch before a step that lies at the level, V over s; null where it is too short, or where a load
     * may make it fall as well: no clamp shows that there is none, and no rested battery is as high.
     */
    private static RobustLine plateau(DriveSignals drive, int end, double level, double full) {
        double[] v = drive.voltage();
        int from = 0;
        int best = 0;
        int length = 0;
        for (int k = 0; k <= end; k++) {
            if (k == end || !(Math.abs(v[k] - level) < LEVEL_V) || drive.running()[k]) {
                if (k - from > length) {
                    best = from;
                    length = k - from;
                }
                from = k + 1;
            }
        }
        boolean off = drive.measuredA() != null && meanCurrent(drive, best, best + length) < ASLEEP_A;
        return length < FEWEST_STEPS || !(off || level > full) ? null : overTime(drive, best, best + length, false, 0);
    }

    private static RobustLine overTime(DriveSignals drive, int from, int to, boolean logarithm, int zero) {
        double[] x = new double[to - from];
        double[] y = new double[to - from];
        double step = drive.grid().stepS();
        for (int k = from; k < to; k++) {
            double s = (k + 0.5 - zero) * step;
            x[k - from] = logarithm ? StrictMath.log10(s) : s;
            y[k - from] = drive.voltage()[k];
        }
        return RobustLine.through(x, y);
    }

    private static double decadesLeft(double stoodS) {
        return stoodS >= DAY_S ? 0 : StrictMath.log10(DAY_S / Math.max(1, stoodS));
    }

    /** Rested voltage where at most {@code most} V are left, positive where it still falls. */
    private static Rested rested(double seen, double most, double se) {
        Interval left = new Interval(most / 2, Math.min(0, most), Math.max(0, most));
        double half = Math.abs(most) / 2;
        double reach = Math.hypot(half, Interval.Z95 * se);
        double value = seen - most / 2;
        return new Rested(new Interval(value, value - reach, value + reach), left, 0);
    }

    /**
     * After the engine was stopped for good, at the end of the recording: the time since is known, so volts a decade are
     * fitted; off a charge no less than usual is left, for the voltage falls slowly at first (the same rests). Empty where that rest is too short or nothing shows that the loads are off.
     */
    static Optional<Rested> after(DriveSignals drive) {
        double[] v = drive.voltage();
        int end = v.length;
        while (end > 0 && Double.isNaN(v[end - 1])) {
            end--;
        }
        int stopped = end;
        while (stopped > 0 && !drive.running()[stopped - 1] && !drive.nearStart(stopped - 1)) {
            stopped--;
        }
        int from = end;
        while (from > stopped + 1 && Math.abs(v[from - 1] - v[from - 2]) < JUMP_V) {
            from--;
        }
        int calm = Math.max(from, stopped + SWITCHED_OFF_STEPS);
        if (stopped == 0 || end - calm < FEWEST_STEPS || !loadsOff(drive, from, calm, end)) {
            return Optional.empty();
        }
        RobustLine line = overTime(drive, calm, end, true, stopped);
        if (line == null || line.slopeSe() > PER_DECADE_V) {
            return Optional.empty();
        }
        double since = (end - stopped) * drive.grid().stepS();
        double seen = line.intercept() + line.slope() * StrictMath.log10(since);
        double perDecade = line.slope() < 0 ? Math.max(-line.slope(), PER_DECADE_V) : -line.slope();
        return Optional.of(rested(seen, perDecade * decadesLeft(since), Math.max(METER_V, line.residualSd())));
    }

    /** Whether a current that is known is about none, or the voltage rose when the loads fell off. */
    private static boolean loadsOff(DriveSignals drive, int rose, int from, int end) {
        if (drive.measuredA() != null) {
            return meanCurrent(drive, from, end) < 1;
        }
        double[] v = drive.voltage();
        return rose > 0 && v[rose] - v[rose - 1] > JUMP_V;
    }

    /** Size of the clamp's mean, A. */
    private static double meanCurrent(DriveSignals drive, int from, int end) {
        double sum = 0;
        for (int k = from; k < end; k++) {
            sum += drive.measuredA()[k];
        }
        return Math.abs(sum / (end - from));
    }

    /**
     * Rested voltage from times since the load changed, s, and voltages, V: what {@link #after} does, for a rest that was
     * noted by hand.
     */
    static Interval rested(double[] sinceS, double[] volts) {
        double[] x = new double[sinceS.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = StrictMath.log10(sinceS[i]);
        }
        double mx = 0;
        double my = 0;
        for (int i = 0; i < x.length; i++) {
            mx += x[i] / x.length;
            my += volts[i] / x.length;
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += (x[i] - mx) * (x[i] - mx);
            xy += (x[i] - mx) * (volts[i] - my);
        }
        double slope = xy / xx;
        int last = x.length - 1;
        return rested(volts[last], -slope * decadesLeft(sinceS[last]), METER_V).voltage();
    }
}
