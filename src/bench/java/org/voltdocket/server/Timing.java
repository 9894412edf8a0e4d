package org.voltdocket.server;

import java.util.Arrays;
import java.util.Locale;

/** Durations of one piece of work done often. */
record Timing(double[] sortedMs) {

    /** Something to be timed. */
    interface Work {
        void run(int i) throws Exception;
    }

    static Timing of(int warmUp, int runs, Work work) throws Exception {
        for (int i = 0; i < warmUp; i++) {
            work.run(i);
        }
        double[] ms = new double[runs];
        for (int i = 0; i < runs; i++) {
            long from = System.nanoTime();
            work.run(warmUp + i);
            ms[i] = (System.nanoTime() - from) / 1e6;
        }
        Arrays.sort(ms);
        return new Timing(ms);
    }

    static Timing of(java.util.List<Double> ms) {
        return new Timing(ms.stream().mapToDouble(Double::doubleValue).sorted().toArray());
    }

    double most() {
        return sortedMs[sortedMs.length - 1];
    }

    double p50() {
        return sortedMs[sortedMs.length / 2];
    }

    double p95() {
        return sortedMs[Math.min(sortedMs.length - 1, sortedMs.length * 95 / 100)];
    }

    String cells() {
        return String.format(Locale.ROOT, "%.1f | %.1f", p50(), p95());
    }
}
