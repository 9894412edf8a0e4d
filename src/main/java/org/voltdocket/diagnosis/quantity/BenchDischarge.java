package org.voltdocket.diagnosis.quantity;

import java.util.Arrays;
import java.util.Optional;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.signal.Robust;

/**
 * The discharge in a bench recording, which may hold a whole cycle of charge, rest and discharge: the longest stretch in which
 * a steady current leaves the battery and its voltage falls as in a capacity run.
 *
 * @param from first row of the discharge
 * @param to row behind it
 */
public record BenchDischarge(int from, int to) {

    /** A capacity run takes at least this, A (ours): less is a vehicle asleep. */
    private static final double LEAST_A = 0.3;
    /** A capacity run falls by at least this, V (ours). */
    private static final double FALL_V = 0.7;
    /** Or ends this near the end of discharge, V (ours). */
    private static final double NEAR_END_V = 0.2;
    /** A bench holds its current, a vehicle does not: spread as a share of it (ours). */
    private static final double SPREAD = 0.25;
    /** Rows that interrupt a discharge, at most, in a row: a sample without current (ours). */
    private static final int PAUSE_ROWS = 3;
    /** A shorter stretch beside a charge is no capacity run, s (ours). */
    private static final double SHORTEST_S = 1800;
    /** A discharge that is at least this share of a recording needs no such length. */
    private static final double MOST = 0.8;

    private static final int FEWEST_ROWS = 10;

    /** Empty where the recording holds no capacity run, has no clamp, or comes from a vehicle. */
    public static Optional<BenchDischarge> of(Recording recording) {
        float[] amperes = recording.channel(Channel.MEASURED_A);
        boolean vehicle = recording.has(Channel.ENGINE_RPM)
                || recording.has(Channel.SPEED)
                || recording.has(Channel.REPORTED_V)
                || recording.has(Channel.REPORTED_A);
        if (amperes == null || vehicle) {
            return Optional.empty();
        }
        BenchDischarge longest = longest(recording.timeS(), amperes);
        return longest.to - longest.from >= FEWEST_ROWS && longest.isRun(recording)
                ? Optional.of(longest)
                : Optional.empty();
    }

    private static BenchDischarge longest(double[] time, float[] amperes) {
        BenchDischarge best = new BenchDischarge(0, 0);
        int from = -1;
        int last = -1;
        int others = 0;
        for (int row = 0; row <= amperes.length; row++) {
            boolean end = row == amperes.length;
            if (!end && amperes[row] < -LEAST_A) {
                from = from < 0 ? row : from;
                last = row;
                others = 0;
            } else if (from >= 0 && (end || !Float.isNaN(amperes[row]) && ++others > PAUSE_ROWS)) {
                if (time[last] - time[from] > time[Math.max(0, best.to - 1)] - time[best.from]) {
                    best = new BenchDischarge(from, last + 1);
                }
                from = -1;
                others = 0;
            }
        }
        return best;
    }

    private boolean isRun(Recording recording) {
        double[] time = recording.timeS();
        double[] amperes = part(recording.channel(Channel.MEASURED_A));
        double[] volts = part(recording.channel(Channel.MEASURED_V));
        double seconds = time[to - 1] - time[from];
        double spread = Robust.quantile(amperes, 0.9) - Robust.quantile(amperes, 0.2);
        double least = Robust.quantile(volts, 0.005);
        double fall = Robust.quantile(volts, 0.98) - least;
        return spread < SPREAD * Math.abs(Robust.median(amperes))
                && (fall >= FALL_V || least <= Capacity.END_V + NEAR_END_V)
                && (seconds >= SHORTEST_S || seconds >= MOST * recording.durationS());
    }

    private double[] part(float[] values) {
        double[] out = new double[to - from];
        Arrays.setAll(out, k -> values[from + k]);
        return out;
    }
}
