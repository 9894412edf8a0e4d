package org.voltdocket.worlds;

import java.util.Arrays;

/** Reads a trace at the times of a recording's rows. */
public final class Sampler {

    private final Trace trace;
    private final double[] times;
    private final Chance chance;
    private final Chance ripples;

    /**
     * @param times of the rows, trace time, s
     */
    public Sampler(Trace trace, double[] times, Chance chance) {
        this.trace = trace;
        this.times = times;
        this.chance = chance;
        this.ripples = chance.of("ripples");
    }

    /** A value at each row with a constant error, noise of a standard deviation, and a resolution. */
    public float[] direct(Trace.Of of, double bias, double noise, double resolution) {
        float[] values = new float[times.length];
        int row = 0;
        for (int i = 0; i < values.length; i++) {
            row = trace.rowAfter(row, times[i]);
            double ripple = of == Trace.Of.POST_V ? trace.get(Trace.Of.RIPPLE_V, row) / 2 : 0;
            double wave = ripple == 0 ? 0 : ripple * StrictMath.sin(2 * StrictMath.PI * ripples.next());
            values[i] = rounded(trace.get(of, row) + wave + bias + noise * chance.normal(), resolution);
        }
        return values;
    }

    /**
     * A value that is polled over a bus.
     *
     * @param everyS time between polls, s; a row between two polls is blank, or repeats the last value if {@code held}
     * @param delayS age of a value when it arrives, s
     * @param scale factor from the trace's unit
     */
    public float[] polled(
            Trace.Of of, double everyS, double delayS, boolean held, double scale, double bias, double resolution) {
        float[] values = new float[times.length];
        float last = Float.NaN;
        double due = times[0] + everyS * chance.next();
        int row = 0;
        for (int i = 0; i < values.length; i++) {
            boolean now = times[i] >= due;
            if (now) {
                row = trace.rowAfter(row, Math.max(0, times[i] - delayS));
                last = rounded(scale * trace.get(of, row) + bias, resolution);
                due = Math.max(due + everyS, times[i]);
            }
            values[i] = now || held ? last : Float.NaN;
        }
        return values;
    }

    /** The same value at each row. */
    public float[] constant(double value) {
        float[] values = new float[times.length];
        Arrays.fill(values, (float) value);
        return values;
    }

    /** To the nearest multiple of a resolution. */
    public static float rounded(double value, double resolution) {
        return (float) (StrictMath.rint(value / resolution) * resolution);
    }

    /** Rows from one time to another with a mean distance and a random deviation as a share of it. */
    public static double[] times(double fromS, double toS, double everyS, double deviation, Chance chance) {
        double[] times = new double[(int) ((toS - fromS) / everyS * 1.3) + 8];
        int n = 0;
        for (double t = fromS; t < toS && n < times.length; t += everyS * (1 + deviation * (chance.next() - 0.5))) {
            times[n++] = t;
        }
        return Arrays.copyOf(times, n);
    }

    /** The times without those in some random gaps of up to {@code longestS}. */
    public static double[] withGaps(double[] times, int gaps, double longestS, Chance chance) {
        double[] kept = times;
        for (int i = 0; i < gaps; i++) {
            double from = chance.between(times[0], times[times.length - 1]);
            double to = from + longestS * chance.next() * chance.next();
            kept = Arrays.stream(kept).filter(t -> t < from || t > to).toArray();
        }
        return kept;
    }

    /** Seconds from the first row, to a millisecond. */
    public static double[] clock(double[] times) {
        return Arrays.stream(times)
                .map(t -> StrictMath.rint((t - times[0]) * 1000) / 1000)
                .toArray();
    }
}
