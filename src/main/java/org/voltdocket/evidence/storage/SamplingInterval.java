package org.voltdocket.evidence.storage;

import org.voltdocket.diagnosis.signal.Robust;

/** The usual time between two samples of a channel: what a gap is measured against. */
final class SamplingInterval {

    private static final int MOST = 100_000;

    private SamplingInterval() {}

    /**
     * Median of the steps between neighbouring samples, s; of every k-th step if there are more than {@value #MOST}.
     * 0 for a single sample.
     */
    static double of(double[] time, float[] values, int samples) {
        int every = Math.max(1, samples / MOST);
        double[] steps = new double[samples / every + 1];
        int n = 0;
        int seen = 0;
        double before = Double.NaN;
        for (int i = 0; i < values.length; i++) {
            if (Float.isNaN(values[i])) {
                continue;
            }
            if (seen > 0 && seen % every == 0) {
                steps[n++] = time[i] - before;
            }
            before = time[i];
            seen++;
        }
        return n == 0 ? 0 : Robust.ranked(steps, n, n / 2);
    }
}
