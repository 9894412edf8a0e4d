package org.voltdocket.diagnosis.quantity;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import org.voltdocket.kernel.Interval;

/** Capacity of a discharge to 10.50 V, its correction to 25 °C, and Peukert's law. */
public final class Capacity {

    /** End of a capacity run, V (EN 50342-1). */
    public static final double END_V = 10.50;

    private Capacity() {}

    /**
     * Charge taken until the voltage first falls to {@link #END_V}, by trapezoids weighted with time.
     *
     * @param timeS increasing, s
     * @param volts V, NaN where not sampled
     * @param amperes discharge current, A, positive out of the battery, NaN where not sampled
     * @return Ah until the end voltage or, where the run stops short of it, until its last sample
     */
    public static double ampereHours(double[] timeS, double[] volts, double[] amperes) {
        double sum = 0;
        int last = -1;
        for (int i = 0; i < timeS.length; i++) {
            if (Double.isNaN(amperes[i])) {
                continue;
            }
            if (last >= 0) {
                sum += 0.5 * (amperes[i] + amperes[last]) * (timeS[i] - timeS[last]);
            }
            last = i;
            if (volts[i] <= END_V) {
                break;
            }
        }
        return sum / 3600;
    }

    /**
     * Capacity brought to 25 °C: C25 = Cθ·[1 - 0.01·(θ - 25)] (IEC 60095-1, EN 50342-1; from memory).
     *
     * @param ampereHours Ah at the temperature
     * @param temperatureC mean temperature of the run, °C
     */
    public static double at25(double ampereHours, double temperatureC) {
        return ampereHours * (1 - 0.01 * (temperatureC - 25));
    }

    /**
     * Running time by Peukert's law, h: t = H·(C/(I·H))^k.
     *
     * @param hours H, hours of the rating, h
     * @param capacity C, rated capacity, Ah
     * @param amperes I, A
     * @param exponent k, 1 or more
     */
    public static double peukertHours(double hours, double capacity, double amperes, double exponent) {
        return hours * StrictMath.pow(capacity / (amperes * hours), exponent);
    }

    /**
     * One capacity run.
     *
     * @param amperes mean current, A
     * @param ampereHours capacity, Ah
     */
    public record Run(double amperes, double ampereHours) {}

    /**
     * Peukert's exponent from runs at different currents: slope of log time over log current, least squares.
     *
     * @return empty where there are fewer than three runs, the currents differ by less than a fifth, or capacity does
     *     not fall with current, which the law demands
     */
    public static OptionalDouble peukertExponent(List<Run> runs) {
        Optional<double[]> line = line(runs);
        if (runs.size() < 3 || line.isEmpty()) {
            return OptionalDouble.empty();
        }
        double exponent = -line.get()[0];
        return exponent >= 1 ? OptionalDouble.of(exponent) : OptionalDouble.empty();
    }

    /**
     * As {@link #peukertExponent}, with Student's 95 % interval of the slope; the exponent is never known better than to
     * 0.02 (ours).
     */
    public static Optional<Interval> peukert(List<Run> runs) {
        OptionalDouble exponent = peukertExponent(runs);
        if (exponent.isEmpty()) {
            return Optional.empty();
        }
        double k = exponent.getAsDouble();
        double[] left = new double[runs.size()];
        double mean = 0;
        double meanX = 0;
        for (int i = 0; i < left.length; i++) {
            double x = StrictMath.log(runs.get(i).amperes());
            left[i] = StrictMath.log(runs.get(i).ampereHours()) - x + k * x;
            mean += left[i] / left.length;
            meanX += x / left.length;
        }
        double square = 0;
        double xx = 0;
        for (int i = 0; i < left.length; i++) {
            double dx = StrictMath.log(runs.get(i).amperes()) - meanX;
            square += (left[i] - mean) * (left[i] - mean);
            xx += dx * dx;
        }
        int free = left.length - 2;
        double t = new TDistribution(free).inverseCumulativeProbability(0.975);
        double half = Math.max(0.02 * Interval.Z95, t * Math.sqrt(square / free / xx));
        return Optional.of(new Interval(k, k - half, k + half));
    }

    private static Optional<double[]> line(List<Run> runs) {
        double least = runs.stream().mapToDouble(Run::amperes).min().orElse(0);
        double most = runs.stream().mapToDouble(Run::amperes).max().orElse(0);
        if (!(most >= 1.2 * least)) {
            return Optional.empty();
        }
        double mx = 0;
        double my = 0;
        for (Run run : runs) {
            mx += StrictMath.log(run.amperes()) / runs.size();
            my += StrictMath.log(run.ampereHours() / run.amperes()) / runs.size();
        }
        double xx = 0;
        double xy = 0;
        for (Run run : runs) {
            double dx = StrictMath.log(run.amperes()) - mx;
            xx += dx * dx;
            xy += dx * (StrictMath.log(run.ampereHours() / run.amperes()) - my);
        }
        return Optional.of(new double[] {xy / xx});
    }
}
