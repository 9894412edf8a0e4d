package org.voltdocket.worlds;

/**
 * A seeded stream of random numbers that is the same on every machine. A stream of a named part does not depend on what
 * was drawn from others, so that two cases of one seed differ only in what differs between them.
 */
public final class Chance {

    private static final long STEP = 0x9E3779B97F4A7C15L;

    private final long seed;
    private long state;

    public Chance(long seed) {
        this.seed = mixed(seed + STEP);
        this.state = this.seed;
    }

    /** The stream of a part, from its beginning. */
    public Chance of(String part) {
        long name = 0;
        for (int i = 0; i < part.length(); i++) {
            name = name * 1_000_003 + part.charAt(i);
        }
        return new Chance(seed ^ mixed(name));
    }

    /** 0 to 1, 1 excluded. */
    public double next() {
        state += STEP;
        return (mixed(state) >>> 11) * 0x1.0p-53;
    }

    /** Uniform between two values. */
    public double between(double from, double to) {
        return from + (to - from) * next();
    }

    /** Standard normal (Box and Muller). */
    public double normal() {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - next()));
        return radius * StrictMath.cos(2 * StrictMath.PI * next());
    }

    /** Whether something of this probability happens. */
    public boolean happens(double probability) {
        return next() < probability;
    }

    /** 0 to {@code bound} − 1. */
    public int below(int bound) {
        return (int) (next() * bound);
    }

    /** One of these. */
    public double one(double... values) {
        return values[below(values.length)];
    }

    /** One of these. */
    @SafeVarargs
    public final <T> T any(T... values) {
        return values[below(values.length)];
    }

    /** The finalizer of SplitMix64 (Steele, Lea and Flood 2014). */
    private static long mixed(long value) {
        long z = (value ^ (value >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
