package org.voltdocket.diagnosis.quantity.bench;

import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.kernel.Interval;

/**
 * The ripple that compressions leave on the voltage while the starter turns: least squares of one sinusoid over a grid of
 * frequencies (Lomb, 1976, for uneven sampling), with the Cramér–Rao bounds of its amplitude and frequency (Rife and
 * Boorstyn, 1974). Uneven compressions show as uneven swings; they hint at the engine, and judge nothing.
 */
final class CompressionRipple {

    /** Starters turn four to eight cylinders at 100 to 300 1/min: 3 to 20 compressions a second (common practice), Hz. */
    private static final double SLOWEST_HZ = 3;

    private static final double FASTEST_HZ = 20;
    private static final double STEP_HZ = 0.05;
    private static final double FEWEST_CYCLES = 2.5;
    private static final double STANDS_OUT = 4;
    /** No compression is a sine, and the trend takes a part of it: relative error of the amplitude, of a cycle (ours). */
    private static final double NO_SINE = 0.03;

    private static final double OF_A_CYCLE = 0.03;
    private static final int FEWEST_SAMPLES = 12;
    private static final int FEWEST_SWINGS = 4;
    private static final int SAMPLES_A_SWING = 6;

    private final double[] t;
    private final double[] v;
    private final double noise;

    private CompressionRipple(double[] t, double[] v, double noise) {
        this.t = t;
        this.v = v;
        this.noise = noise;
    }

    /**
     * What the ripple measures, by quantity; empty where none stands out of the rest.
     *
     * @param t increasing, s
     * @param v voltage freed of its trend, V
     * @param noise standard deviation of the voltmeter, V
     */
    static Map<String, Interval> in(double[] t, double[] v, double noise) {
        Map<String, Interval> out = new LinkedHashMap<>();
        double length = t.length < FEWEST_SAMPLES ? 0 : t[t.length - 1] - t[0];
        double fastest = Math.min(FASTEST_HZ, 0.4 * (t.length - 1) / Math.max(1e-9, length));
        double slowest = Math.max(SLOWEST_HZ, FEWEST_CYCLES / Math.max(1e-9, length));
        if (length == 0 || fastest <= slowest) {
            return out;
        }
        new CompressionRipple(t, v, noise).measure(slowest, fastest, length, out);
        return out;
    }

    private void measure(double slowest, double fastest, double length, Map<String, Interval> out) {
        double best = 0;
        double hertz = 0;
        for (int k = 0; slowest + k * STEP_HZ <= fastest; k++) {
            double amplitude = amplitude(slowest + k * STEP_HZ);
            if (amplitude > best) {
                best = amplitude;
                hertz = slowest + k * STEP_HZ;
            }
        }
        double square = 0;
        for (double one : v) {
            square += one * one / v.length;
        }
        double left = Math.sqrt(Math.max(noise * noise, square - best * best / 2));
        double se = left * Math.sqrt(2.0 / v.length);
        if (best < STANDS_OUT * se) {
            return;
        }
        double hertzSe = Math.sqrt(6) * left / (Math.PI * length * best * Math.sqrt(v.length))
                + STEP_HZ / 2
                + OF_A_CYCLE / length;
        out.put("compression-ripple", Interval.ofStandardError(2 * best, 2 * Math.hypot(se, NO_SINE * best)));
        out.put("compression-frequency", Interval.ofStandardError(hertz, hertzSe));
        unevenness(hertz, length, out);
    }

    private double amplitude(double hertz) {
        double cc = 0;
        double ss = 0;
        double cs = 0;
        double vc = 0;
        double vs = 0;
        for (int i = 0; i < t.length; i++) {
            double angle = 2 * Math.PI * hertz * (t[i] - t[0]);
            double c = StrictMath.cos(angle);
            double s = StrictMath.sin(angle);
            cc += c * c;
            ss += s * s;
            cs += c * s;
            vc += v[i] * c;
            vs += v[i] * s;
        }
        double det = cc * ss - cs * cs;
        double a = (vc * ss - vs * cs) / det;
        double b = (vs * cc - vc * cs) / det;
        return det > 0 ? Math.sqrt(a * a + b * b) : 0;
    }

    /** Largest less smallest swing over their mean, %: a cylinder that compresses less pulls less. */
    private void unevenness(double hertz, double length, Map<String, Interval> out) {
        int swings = (int) (length * hertz);
        if (swings < FEWEST_SWINGS || t.length < SAMPLES_A_SWING * swings) {
            return;
        }
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        double sum = 0;
        for (int k = 0; k < swings; k++) {
            double swing = swing(t[0] + k / hertz, t[0] + (k + 1) / hertz);
            least = Math.min(least, swing);
            most = Math.max(most, swing);
            sum += swing / swings;
        }
        double se = 100 * 2 * noise / sum;
        out.put("compression-unevenness", Interval.ofStandardError(100 * (most - least) / sum, se));
    }

    private double swing(double from, double to) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < t.length; i++) {
            if (t[i] >= from && t[i] < to) {
                low = Math.min(low, v[i]);
                high = Math.max(high, v[i]);
            }
        }
        return Math.max(0, high - low);
    }
}
