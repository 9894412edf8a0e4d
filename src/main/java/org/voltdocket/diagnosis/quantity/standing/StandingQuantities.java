package org.voltdocket.diagnosis.quantity.standing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.diagnosis.signal.RobustLine;
import org.voltdocket.kernel.Interval;

/**
 * A vehicle that stands: its drain, and what its current sensor says asleep.
 *
 * <p>Makers allow 10 to 50 mA after 5 to 75 minutes; the first hour, or half of a shorter recording, is left out. With a
 * clamp the drain is its mean. Without one it is the slope of the voltage once an exponential relaxation is taken out,
 * over the slope of rest voltage by charge.
 */
public final class StandingQuantities {

    private static final double FALL_ASLEEP_S = 3600;
    private static final double[] RELAXATION_S = {1200, 2400, 4800, 9600};
    private static final double CLAMP_ZERO_A = 0.02;
    private static final double SHORTEST_BY_VOLTAGE_S = 10_800;
    /** What a battery off the charger may still sink in an hour, an hour after, V; less with the square of time (ours). */
    private static final double SETTLING_V = 0.08;
    /** More than this flattens a battery within a night or two: nothing asleep takes more (common practice), A. */
    private static final double MOST_A = 10;

    private final List<Measurement> out = new ArrayList<>();
    private final Map<String, Interval> estimates = new LinkedHashMap<>();
    private final Recording recording;
    private final Evidence evidence;
    private final MeasurementContext reference;
    private final Grid grid;
    private final int from;

    private StandingQuantities(Evidence evidence, MeasurementContext reference) {
        this.evidence = evidence;
        this.reference = reference;
        this.recording = (Recording) evidence.reading();
        double step = Math.max(10, recording.durationS() / 2000);
        this.grid = Grid.of(recording, step);
        this.from = (int) (Math.min(FALL_ASLEEP_S, 0.5 * recording.durationS()) / grid.stepS());
    }

    /** Measures one standing recording. */
    public static StandingQuantities of(Evidence evidence, MeasurementContext reference) {
        StandingQuantities all = new StandingQuantities(evidence, reference);
        Interval drain = all.drain();
        all.sensor(drain);
        if (all.recording.has(Channel.MEASURED_A)) {
            double asleep = all.grid.timeOf(all.from);
            WakeUps.in(all.recording, asleep).forEach(all::say);
        }
        return all;
    }

    public List<Measurement> measurements() {
        return out;
    }

    public Map<String, Interval> estimates() {
        return estimates;
    }

    /** At rest throughout. */
    public List<RegimeSpan> regimes() {
        double[] t = recording.timeS();
        return List.of(new RegimeSpan(t[0], t[t.length - 1], Regime.REST));
    }

    private double[] asleep(double[] values) {
        double[] copy = new double[Math.max(0, values.length - from)];
        System.arraycopy(values, Math.min(from, values.length), copy, 0, copy.length);
        return copy;
    }

    private Interval drain() {
        double[] clamp = grid.mean(Channel.MEASURED_A);
        if (clamp != null && Robust.count(asleep(clamp)) > 5) {
            double[] quiet = asleep(clamp);
            double sd = Robust.sd(quiet);
            double se = Math.sqrt(CLAMP_ZERO_A * CLAMP_ZERO_A + sd * sd / Robust.count(quiet));
            Interval drain = Interval.ofStandardError(-Robust.mean(quiet), se);
            say("standing-drain", drain);
            estimates.put("standingDrainA", drain);
            return drain;
        }
        Interval byVoltage = recording.durationS() >= SHORTEST_BY_VOLTAGE_S ? byVoltage() : null;
        if (byVoltage != null) {
            say("standing-drain-by-voltage", byVoltage);
            estimates.put("standingDrainA", byVoltage);
        }
        return byVoltage;
    }

    private Interval byVoltage() {
        double[] v = asleep(grid.voltage());
        double perAh = reference.slopeVPerAh();
        RobustLine best = null;
        for (double tau : RELAXATION_S) {
            RobustLine line = withRelaxation(v, tau);
            if (line != null && (best == null || line.residualSd() < best.residualSd())) {
                best = line;
            }
        }
        if (best == null) {
            return null;
        }
        double drain = -best.slope() / perAh;
        double slopeSe = best.slopeSe() / perAh;
        double hours = recording.durationS() / 3600;
        double settling = SETTLING_V / (hours * hours) / perAh;
        double se = Math.sqrt(slopeSe * slopeSe + 0.09 * drain * drain + settling * settling);
        return Math.abs(drain) > MOST_A ? null : Interval.ofStandardError(drain, se);
    }

    /** Voltage over hours with the part taken out that an exponential explains beyond a straight line. */
    private RobustLine withRelaxation(double[] v, double tau) {
        int n = v.length;
        double[] hours = new double[n];
        double[] decay = new double[n];
        for (int k = 0; k < n; k++) {
            hours[k] = k * grid.stepS() / 3600;
            decay[k] = StrictMath.exp(-k * grid.stepS() / tau);
        }
        RobustLine trendOfDecay = RobustLine.through(hours, decay);
        RobustLine trend = RobustLine.through(hours, v);
        if (trendOfDecay == null || trend == null) {
            return null;
        }
        double[] bent = new double[n];
        double[] rest = new double[n];
        for (int k = 0; k < n; k++) {
            bent[k] = decay[k] - trendOfDecay.intercept() - trendOfDecay.slope() * hours[k];
            rest[k] = v[k] - trend.intercept() - trend.slope() * hours[k];
        }
        RobustLine part = RobustLine.through(bent, rest);
        if (part == null || part.slope() < 0) {
            return trend;
        }
        double[] straight = new double[n];
        for (int k = 0; k < n; k++) {
            straight[k] = v[k] - part.slope() * decay[k];
        }
        return RobustLine.through(hours, straight);
    }

    private void sensor(Interval drain) {
        double[] held = grid.held(Channel.REPORTED_A, 0);
        if (held == null) {
            return;
        }
        double[] quiet = asleep(held);
        if (Robust.count(quiet) < 5) {
            return;
        }
        double reads = Robust.mean(quiet);
        double least = drain == null ? 0 : Math.max(0, drain.low());
        double most = drain == null ? Math.max(1, -reads) : Math.max(least, Math.min(MOST_A, drain.high()));
        double middle = drain == null ? 0.05 : Math.max(least, Math.min(most, drain.value()));
        Interval offset = new Interval(reads + middle, reads + least, reads + most);
        say("sensor-at-rest", offset);
        estimates.put("sensorOffsetA", offset);
    }

    private void say(String quantity, Interval value) {
        out.add(Measurement.of(quantity, evidence, value));
    }
}
