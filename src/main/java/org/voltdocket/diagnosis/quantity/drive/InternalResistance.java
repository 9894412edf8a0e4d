package org.voltdocket.diagnosis.quantity.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * The battery's internal resistance, mΩ, by Ohm's law from what a clamp and the posts show: while cranking, sample by
 * sample, and at steps of the load, engine running or off. The reported current comes too late and too coarse for it.
 */
final class InternalResistance {

    /** Above this the battery's charging side adds to the resistance, V. */
    private static final double SUPPLYING_V = 12.9;

    private static final double STEP_A = 3;
    private static final int FEWEST_STEPS = 15;
    /** Samples of one start that tell a slope. */
    private static final int FEWEST_ROWS = 8;

    private static final double START_SWING_A = 60;
    /** A clamp's scale, standard error (common practice). */
    private static final double CLAMP_SCALE = 0.015;
    /** How it differs with the current that it is told by, standard error (ours: charge transfer bends). */
    private static final double BY_STARTS = 0.08;
    /** The same at load steps, a second after which charge transfer has added its part (ours). */
    private static final double BY_STEPS = 0.15;
    /** Rows further apart than this add diffusion, s (ours). */
    private static final double MOST_ROW_S = 1.2;
    /** Between currents out of the battery only: else a source moves the voltage, A. */
    private static final double SUPPLIES_A = 0.5;
    /** A resistance vaguer than this is not told, relative standard error. */
    private static final double VAGUE = 0.25;

    private final DriveContext context;

    private InternalResistance(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        if (context.drive.measuredA() != null) {
            InternalResistance all = new InternalResistance(context);
            Optional<Interval> starts = all.byStarts();
            Optional<Interval> steps = all.bySteps();
            starts.ifPresent(r -> context.add("resistance-by-starts", r));
            steps.ifPresent(r -> context.add("resistance-by-steps", r));
            narrower(starts, steps).ifPresent(all::byRating);
        }
    }

    private static Optional<Interval> narrower(Optional<Interval> a, Optional<Interval> b) {
        boolean second = b.isPresent()
                && (a.isEmpty() || b.get().standardError() < a.get().standardError());
        return second ? b : a;
    }

    private void byRating(Interval milliohm) {
        context.estimates.put("internalResistanceMilliohm", milliohm);
        Double rated = context.reference.facts().battery().ratedCrankingA();
        if (rated != null) {
            double f = rated / 1000;
            context.add(
                    "resistance-by-rating",
                    new Interval(milliohm.value() * f, milliohm.low() * f, milliohm.high() * f));
        }
    }

    private Optional<Interval> byStarts() {
        Recording recording = context.drive.grid().recording();
        float[] volts = recording.channel(Channel.MEASURED_V);
        float[] amperes = recording.channel(Channel.MEASURED_A);
        double[] time = recording.timeS();
        List<Double> slopes = new ArrayList<>();
        double weakest = 0;
        int row = 0;
        for (EngineStart start : context.drive.starts()) {
            while (row < time.length && time[row] < start.fromS() - 0.2) {
                row++;
            }
            int from = row;
            while (row < time.length && time[row] <= start.toS() + 0.2) {
                row++;
            }
            double[] i = new double[row - from];
            double[] v = new double[row - from];
            for (int k = from; k < row; k++) {
                i[k - from] = amperes[k];
                v[k - from] = volts[k];
            }
            RobustLine line = Robust.count(i) >= FEWEST_ROWS
                            && Robust.quantile(i, 0.95) - Robust.quantile(i, 0.05) >= START_SWING_A
                    ? RobustLine.through(i, v)
                    : null;
            if (line != null && line.slope() > 0) {
                slopes.add(1000 * line.slope());
                weakest = Math.max(weakest, 1000 * line.slopeSe());
            }
        }
        if (slopes.isEmpty()) {
            return Optional.empty();
        }
        double value =
                Robust.median(slopes.stream().mapToDouble(Double::doubleValue).toArray());
        double se = Math.hypot(weakest / Math.sqrt(slopes.size()), Math.hypot(CLAMP_SCALE, BY_STARTS) * value);
        return se > VAGUE * value ? Optional.empty() : Optional.of(Interval.ofStandardError(value, se));
    }

    private Optional<Interval> bySteps() {
        if (context.drive.grid().rowS() > MOST_ROW_S) {
            return Optional.empty();
        }
        double[] i = context.drive.measuredA();
        double[] v = context.drive.grid().voltage();
        boolean[] running = context.drive.running();
        double[] di = new double[v.length];
        double[] dv = new double[v.length];
        for (int k = 0; k < v.length; k++) {
            boolean usable = k > 0
                    && running[k] == running[k - 1]
                    && !context.drive.nearStart(k)
                    && !context.drive.nearStart(k - 1)
                    && v[k] < SUPPLYING_V
                    && v[k - 1] < SUPPLYING_V;
            usable &= k > 0 && i[k] < -SUPPLIES_A && i[k - 1] < -SUPPLIES_A;
            double step = usable ? i[k] - i[k - 1] : Double.NaN;
            di[k] = Math.abs(step) >= STEP_A ? step : Double.NaN;
            dv[k] = usable ? v[k] - v[k - 1] : Double.NaN;
        }
        RobustLine line = RobustLine.through(di, dv);
        if (line == null
                || line.points() < FEWEST_STEPS
                || line.slope() <= 0
                || line.slopeSe() > VAGUE * line.slope()) {
            return Optional.empty();
        }
        double value = 1000 * line.slope();
        return Optional.of(Interval.ofStandardError(
                value, Math.hypot(1000 * line.slopeSe(), Math.hypot(CLAMP_SCALE, BY_STEPS) * value)));
    }
}
