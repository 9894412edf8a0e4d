package org.voltdocket.diagnosis.quantity.sensor;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * What the vehicle's battery current sensor reads too high, A, against an independent clamp: intercept of a robust line
 * of reported over measured current, and its slope, the gain.
 */
public final class ClampComparison {

    private static final int BLOCK_STEPS = 5;
    /** Zero error of an independent clamp, A, standard error (common practice). */
    private static final double CLAMP_ZERO_A = 0.2;
    /** Scale error of an independent clamp, standard error (common practice). */
    private static final double CLAMP_SCALE = 0.015;

    /** A current that swings by less tells no gain, A (ours). */
    private static final double SWING_A = 8;
    /** Rows further apart than this compare different moments, s (ours). */
    private static final double MOST_ROW_S = 2.5;

    /**
     * @param offsetA reading at no current, A
     * @param gain reported per true ampere; null where the current varies too little to tell
     */
    public record Result(Interval offsetA, Interval gain) {}

    private ClampComparison() {}

    /** Compares the two currents; empty where one of them is missing or they overlap less than a minute. */
    public static Optional<Result> byClamp(DriveSignals drive) {
        if (drive.measuredA() == null || drive.reportedA() == null) {
            return Optional.empty();
        }
        double[] x = DriveSignals.blocks(awayFromStarts(drive, drive.measuredA()), BLOCK_STEPS);
        double[] y = DriveSignals.blocks(awayFromStarts(drive, drive.reportedA()), BLOCK_STEPS);
        RobustLine line = RobustLine.through(x, y);
        if (line == null || line.points() < 12) {
            return Optional.empty();
        }
        double se = Math.sqrt(line.interceptSe() * line.interceptSe() + CLAMP_ZERO_A * CLAMP_ZERO_A);
        Interval offset = Interval.ofStandardError(line.intercept(), se);
        double gainSe = Math.sqrt(line.slopeSe() * line.slopeSe() + CLAMP_SCALE * CLAMP_SCALE);
        double swing = Robust.quantile(x, 0.95) - Robust.quantile(x, 0.05);
        boolean varies = swing >= SWING_A && drive.grid().rowS() <= MOST_ROW_S;
        Interval gain = varies && gainSe < 0.1 ? Interval.ofStandardError(line.slope(), gainSe) : null;
        return Optional.of(new Result(offset, gain));
    }

    private static double[] awayFromStarts(DriveSignals drive, double[] values) {
        double[] out = values.clone();
        for (int k = 0; k < out.length; k++) {
            if (drive.nearStart(k)) {
                out[k] = Double.NaN;
            }
        }
        return out;
    }
}
