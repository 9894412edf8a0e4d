package org.voltdocket.demo.model;

import java.util.List;
import java.util.SplittableRandom;

/** Seeded random numbers: the same seed gives the same numbers on every machine. */
public final class SeededRandom {

    private final SplittableRandom source;
    private double spare = Double.NaN;

    public SeededRandom(long seed) {
        this.source = new SplittableRandom(seed);
    }

    private SeededRandom(SplittableRandom source) {
        this.source = source;
    }

    /** An independent stream; what is drawn from it does not shift this one. */
    public SeededRandom split() {
        return new SeededRandom(source.split());
    }

    /** Uniform in [low, high). */
    public double between(double low, double high) {
        return low + (high - low) * unit();
    }

    /** Uniform whole number in [low, high], both included. */
    public int whole(int low, int high) {
        return low + (int) (unit() * (high - low + 1));
    }

    /** True with the given probability. */
    public boolean odds(double probability) {
        return unit() < probability;
    }

    /** One of the given values, each as likely. */
    @SafeVarargs
    public final <T> T of(T... values) {
        return values[whole(0, values.length - 1)];
    }

    /** One of a list. */
    public <T> T of(List<T> values) {
        return values.get(whole(0, values.size() - 1));
    }

    /** Normal with mean 0 (Marsaglia's polar method, so that it does not depend on the runtime's own). */
    public double normal(double standardDeviation) {
        if (!Double.isNaN(spare)) {
            double kept = spare;
            spare = Double.NaN;
            return kept * standardDeviation;
        }
        double x;
        double y;
        double square;
        do {
            x = 2 * unit() - 1;
            y = 2 * unit() - 1;
            square = x * x + y * y;
        } while (square >= 1 || square == 0);
        double factor = StrictMath.sqrt(-2 * StrictMath.log(square) / square);
        spare = y * factor;
        return x * factor * standardDeviation;
    }

    private double unit() {
        return (source.nextLong() >>> 11) * 0x1.0p-53;
    }
}
