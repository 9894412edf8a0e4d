package org.voltdocket.diagnosis.quantity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.regime.Regimes;
import org.voltdocket.diagnosis.regime.Start;
import org.voltdocket.diagnosis.signal.Line;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Everything that is measured in the recording of a drive. */
public final class DriveQuantities {

    private static final int BLOCK_STEPS = 5;
    private static final int CALM_STEPS = 4;
    private static final double CALM_V = 0.06;
    /** A current that swings less than this tells no resistance, A for a 70 Ah battery (ours). */
    private static final double SWING_A = 8;
    /** Above this the engine turns fast enough for a source to give what it can, km/h (ours). */
    private static final double MOVING_KMH = 20;
    /** Above this the battery's charging side adds to the resistance, V. */
    private static final double SUPPLYING_V = 12.9;
    /** Reported above this, the vehicle takes its battery to be charging, V (common practice). */
    private static final double CHARGE_SEEN_V = 13.2;
    /** Below this, no battery that has run for minutes takes charge worth the name, V (common practice). */
    private static final double NO_CHARGE_V = 12.7;
    /** Least time with a running engine that says something of charging, s (ours). */
    private static final int FEWEST_STEADY_STEPS = 120;
    /** Below this a battery is low and a working vehicle charges it, % (common practice: targets lie at 75 to 85 %). */
    static final double LOW_CHARGE = 68;
    /** A source that reaches this can charge, V (vehicle workshop manual, 2018: 13.7 to 14.6 V at 20 °C, less drop). */
    private static final double LIFTED_V = 13.4;

    private final Evidence evidence;
    private final Drive drive;
    private final Reference reference;
    private final List<Measurement> out = new ArrayList<>();
    private final Map<String, Interval> estimates = new LinkedHashMap<>();
    private final List<RegimeSpan> regimes;
    private final DriveFlow flow;
    private final Optional<Interval> restV;
    private final Optional<Interval> socStart;

    private DriveQuantities(Evidence evidence, Reference reference) {
        this.evidence = evidence;
        this.reference = reference;
        this.drive = new Drive((Recording) evidence.reading(), reference.temperatureC());
        this.restV = DriveRest.before(drive);
        this.socStart = restV.map(v ->
                RestVoltage.charge(reference.chemistry(), v.value(), drive.temperatureC(), v.standardError(), 0.08));
        Optional<Interval> offset = offset();
        this.flow = DriveFlow.of(
                drive, reference, offset, restV.map(Interval::value).orElse(Double.NaN));
        this.regimes = Regimes.cut(drive.grid(), drive.starts(), drive.running(), flow.regimes());
    }

    /** Measures one drive recording. */
    public static DriveQuantities of(Evidence evidence, Reference reference) {
        DriveQuantities all = new DriveQuantities(evidence, reference);
        all.charge();
        all.starts();
        if (all.drive.steadySteps() >= FEWEST_STEADY_STEPS) {
            all.source();
            all.comparisons();
        }
        return all;
    }

    public List<Measurement> measurements() {
        return out;
    }

    /** Estimates by name as the assessment shows them. */
    public Map<String, Interval> estimates() {
        return estimates;
    }

    public List<RegimeSpan> regimes() {
        return regimes;
    }

    private void say(String quantity, Interval value) {
        out.add(Measurement.of(quantity, evidence, value).at(drive.temperatureC()));
    }

    private Optional<Interval> offset() {
        Optional<SensorOffset.Result> clamp = SensorOffset.byClamp(drive);
        Optional<Interval> fit =
                SensorFit.offset(drive, RestVoltage.slope(reference.chemistry(), 60), reference.capacityAh());
        if (clamp.isPresent()) {
            say("sensor-offset-by-clamp/1", clamp.get().offsetA());
            if (clamp.get().gain() != null) {
                say("sensor-gain/1", clamp.get().gain());
            }
        } else {
            fit.ifPresent(f -> say("sensor-offset-by-fit/1", f));
        }
        Optional<Interval> best = clamp.map(SensorOffset.Result::offsetA).or(() -> fit);
        best.ifPresent(b -> estimates.put("sensorOffsetA", b));
        return best;
    }

    /** Most sensors are right: an offset whose interval holds zero is not taken off, only its uncertainty kept. */
    private static Interval honestUnlessProven(Interval offset) {
        boolean zero = offset.low() <= 0 && offset.high() >= 0;
        return zero ? Interval.ofStandardError(0, offset.standardError()) : offset;
    }

    private void charge() {
        socStart.ifPresent(soc -> {
            estimates.put("socStartPct", soc);
            say("charge-before-drive/1", soc);
        });
        if (flow.current() == null) {
            return;
        }
        double[] current = flow.current();
        double sum = 0;
        int n = 0;
        for (double i : current) {
            if (!Double.isNaN(i)) {
                sum += i;
                n++;
            }
        }
        if (n < current.length / 2) {
            return;
        }
        double hours = current.length * drive.grid().stepS() / 3600;
        Interval net = Interval.ofStandardError(sum / n * hours, flow.currentSe() * hours);
        estimates.put("netChargeAh", net);
        socStart.ifPresent(soc -> {
            double moved = 100 * net.value() / reference.capacityAh();
            double se = 100 * net.standardError() / reference.capacityAh();
            double end = clip(soc.value() + moved);
            double low = clip(soc.low() + moved - 2 * se);
            double high = clip(soc.high() + moved + 2 * se);
            estimates.put("socEndPct", new Interval(end, Math.min(low, end), Math.max(high, end)));
        });
    }

    private static double clip(double percent) {
        return Math.max(0, Math.min(100, percent));
    }

    private void starts() {
        double interval =
                drive.grid().recording().durationS() / drive.grid().recording().rows();
        for (Start start : drive.starts()) {
            boolean fastEnough = interval <= 0.12;
            boolean charged = socStart.isEmpty() || socStart.get().value() >= LOW_CHARGE;
            boolean low = start.minimumV() < CrankingLoad.leastVoltage(drive.temperatureC());
            if (charged && (fastEnough || low)) {
                say("cranking-minimum/1", Interval.ofStandardError(start.minimumV(), 0.05));
            }
            return; // the first start is the cold one; later ones find the engine warm
        }
    }

    private void source() {
        double[] v = drive.steadyOnly(drive.voltage());
        double[] tens = Drive.blocks(v, 10);
        double highest = Robust.quantile(tens, 1);
        if (Double.isNaN(highest)) {
            return; // sampled so thinly that no ten seconds tell a voltage
        }
        say("highest-charging-voltage/1", Interval.ofStandardError(highest, 0.02));
        say("over-voltage-share/1", Interval.exact(share(v, x -> x > overVoltage())));
        double[] moving = movingOnly(v);
        say("low-running-voltage-share/1", Interval.exact(share(moving, x -> x < lowRunning())));
        boolean lifts = highest >= LIFTED_V;
        if (!mayRest()) {
            say(lifts ? "unsupported-yet-lifted/1" : "unsupported-share/1", Interval.exact(unsupported(moving)));
        }
        double charging = flowShare(Regime.CHARGING);
        socStart.filter(soc -> soc.value() < LOW_CHARGE).ifPresent(soc -> {
            meanRunningCurrent().ifPresent(mean -> say("charging-when-low/1", mean));
            say("charging-share-when-low/1", Interval.exact(charging));
            say("holding-share-when-low/1", Interval.exact(flowShare(Regime.HOLDING)));
            say("lift-when-low/1", Interval.ofStandardError(highest, 0.02));
        });
        if (lifts && socStart.filter(soc -> soc.value() < LOW_CHARGE).isPresent()) {
            say("failing-at-times/1", Interval.exact(Math.min(charging, unsupported(moving))));
        }
        firstReportedSoc()
                .filter(soc -> soc < LOW_CHARGE)
                .ifPresent(soc -> say(
                        "answer-to-reported-need/1",
                        Interval.exact(Math.max(charging, share(moving, x -> x >= LIFTED_V)))));
        drainWhileReported();
        drainWhileHeld();
        vehicleSeesCharge();
    }

    /** A managed source may leave a battery with charge to spare alone; no other may, and none a low one. */
    private boolean mayRest() {
        boolean conventional = reference.facts().vehicle().chargingControl() == ChargingControl.CONVENTIONAL;
        boolean low = socStart.filter(soc -> soc.value() < LOW_CHARGE).isPresent();
        return !conventional && !low;
    }

    /** Without the standstills, at which a sound source may fall short of the loads; all of it where speed is not known. */
    private double[] movingOnly(double[] v) {
        double[] speed = drive.speed();
        if (speed == null) {
            return v;
        }
        double[] out = v.clone();
        for (int k = 0; k < out.length; k++) {
            out[k] = speed[k] > MOVING_KMH ? out[k] : Double.NaN;
        }
        return Robust.count(out) >= FEWEST_STEADY_STEPS / 2 ? out : v;
    }

    private double overVoltage() {
        return 15.05 - 0.008 * (drive.temperatureC() - 20);
    }

    private double lowRunning() {
        return 13.0 - 0.003 * (drive.temperatureC() - 20);
    }

    private double unsupported(double[] v) {
        double rest = restV.map(Interval::value).orElse(12.3);
        double heavy = -8 * reference.size();
        double[] current = flow.current();
        int n = 0;
        int hit = 0;
        for (int k = 0; k < v.length; k++) {
            if (Double.isNaN(v[k])) {
                continue;
            }
            n++;
            boolean known = current != null && !Double.isNaN(current[k]);
            hit += (known ? current[k] < heavy : v[k] < rest - 0.15) ? 1 : 0;
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }

    private Optional<Interval> meanRunningCurrent() {
        if (flow.current() == null) {
            return Optional.empty();
        }
        double[] blocks = Drive.blocks(drive.steadyOnly(flow.current()), BLOCK_STEPS);
        double mean = Robust.mean(blocks);
        return Double.isNaN(mean) ? Optional.empty() : Optional.of(Interval.ofStandardError(mean, flow.currentSe()));
    }

    /** Share of the running time in which the vehicle reports charging while the posts lie under the rest voltage. */
    private void drainWhileReported() {
        double[] reported = drive.reportedA();
        if (reported == null || restV.isEmpty()) {
            return;
        }
        double under = restV.get().value() - 0.03;
        int n = 0;
        int hit = 0;
        for (int k = 0; k < reported.length; k++) {
            if (drive.steady(k) && !Double.isNaN(reported[k])) {
                n++;
                hit += reported[k] > 0.5 && drive.voltage()[k] < under ? 1 : 0;
            }
        }
        if (n >= FEWEST_STEADY_STEPS) {
            say("reported-charge-under-rest/1", Interval.exact(100.0 * hit / n));
        }
    }

    /** Share of the running time in which the vehicle sees charging voltage and charging current, and the posts see neither. */
    private void vehicleSeesCharge() {
        double[] amperes = drive.reportedA();
        double[] volts = drive.reportedV();
        if (amperes == null || volts == null) {
            return;
        }
        double[] seen = new double[volts.length];
        for (int k = 0; k < seen.length; k++) {
            boolean told = drive.steady(k) && calm(k) && !Double.isNaN(amperes[k]) && !Double.isNaN(volts[k]);
            boolean claims = volts[k] > CHARGE_SEEN_V && amperes[k] > 0;
            seen[k] = told ? (claims && drive.voltage()[k] < NO_CHARGE_V ? 1 : 0) : Double.NaN;
        }
        if (Robust.count(seen) >= FEWEST_STEADY_STEPS / 2) {
            say("charge-seen-by-vehicle-only/1", Interval.exact(share(seen, one -> one > 0.5)));
        }
    }

    /** Share of the time held at charging voltage in which the vehicle reports a discharge. */
    private void drainWhileHeld() {
        if (drive.reportedA() == null) {
            return;
        }
        double[] held = SensorFit.lastingAtCharge(drive, drive.reportedA());
        if (Robust.count(held) >= FEWEST_STEADY_STEPS / 2) {
            say("reported-drain-while-held/1", Interval.exact(share(held, a -> a < -0.5)));
        }
    }

    private void comparisons() {
        reportedVoltage();
        reportedSoc();
        resistance();
    }

    private void reportedVoltage() {
        if (drive.reportedV() == null) {
            return;
        }
        double[] gap = new double[drive.voltage().length];
        for (int k = 0; k < gap.length; k++) {
            gap[k] = drive.steady(k) && calm(k) ? drive.reportedV()[k] - drive.voltage()[k] : Double.NaN;
        }
        gapChange(gap);
        double[] gaps = Drive.blocks(gap, BLOCK_STEPS);
        double[] current = flow.current() != null ? flow.current() : drive.reportedA();
        double[] currents = current == null ? new double[0] : Drive.blocks(drive.steadyOnly(current), BLOCK_STEPS);
        double swing = Robust.quantile(currents, 0.95) - Robust.quantile(currents, 0.05);
        Line line = swing >= SWING_A * reference.size() ? Line.through(currents, gaps) : null;
        if (line != null && line.slopeSe() < 0.004) {
            Interval bias = Interval.ofStandardError(line.intercept(), Math.max(0.015, line.interceptSe()));
            Interval milliohm = Interval.ofStandardError(1000 * line.slope(), 1000 * line.slopeSe() + 0.3);
            estimates.put("voltageDisagreementV", bias);
            estimates.put("harnessResistanceMilliohm", milliohm);
            say("reported-voltage-bias/1", bias);
            say("harness-resistance/1", milliohm);
            return;
        }
        double median = Robust.median(gaps);
        if (!Double.isNaN(median)) {
            Interval bias = Interval.ofStandardError(median, 0.02);
            estimates.put("voltageDisagreementV", bias);
            say("reported-voltage-bias/1", bias);
        }
    }

    /** How much more the vehicle says than the posts have while charging than it does with the engine off, V. */
    private void gapChange(double[] gap) {
        double[] off = new double[gap.length];
        double[] charging = new double[gap.length];
        for (int k = 0; k < gap.length; k++) {
            boolean stopped = !drive.running()[k] && !drive.nearStart(k) && calm(k);
            off[k] = stopped ? drive.reportedV()[k] - drive.voltage()[k] : Double.NaN;
            charging[k] = drive.reportedV()[k] > CHARGE_SEEN_V ? gap[k] : Double.NaN;
        }
        if (Robust.count(off) >= 5 && Robust.count(charging) >= FEWEST_STEADY_STEPS / 2) {
            double change = Robust.median(charging) - Robust.median(off);
            say("gap-while-charging/1", Interval.ofStandardError(change, 0.03));
        }
    }

    /** Whether the voltage stays put for seconds, so that what is left of a delay does not look like a difference. */
    private boolean calm(int step) {
        double[] v = drive.voltage();
        for (int k = Math.max(1, step - CALM_STEPS); k < Math.min(v.length, step + 2); k++) {
            if (!(Math.abs(v[k] - v[k - 1]) < CALM_V)) {
                return false;
            }
        }
        return true;
    }

    private void reportedSoc() {
        if (drive.reportedSoc() == null || socStart.isEmpty()) {
            return;
        }
        Interval rest = socStart.get();
        firstReportedSoc()
                .ifPresent(first -> say(
                        "reported-charge-error/1",
                        new Interval(first - rest.value(), first - rest.high(), first - rest.low())));
    }

    private Optional<Double> firstReportedSoc() {
        if (drive.reportedSoc() != null) {
            for (double soc : drive.reportedSoc()) {
                if (!Double.isNaN(soc)) {
                    return Optional.of(soc);
                }
            }
        }
        return Optional.empty();
    }

    /** Share of the moving time in a regime, %. */
    private double flowShare(Regime regime) {
        double[] v = movingOnly(drive.steadyOnly(drive.voltage()));
        int n = 0;
        int hit = 0;
        for (int k = 0; k < v.length; k++) {
            if (!Double.isNaN(v[k])) {
                n++;
                hit += flow.regimes()[k] == regime ? 1 : 0;
            }
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }

    /** Slope of voltage steps over current steps, clamp only: the reported current comes too late and too coarse. */
    private void resistance() {
        double[] i = drive.measuredA();
        if (i == null) {
            return;
        }
        double[] v = drive.grid().voltage();
        double[] di = new double[v.length];
        double[] dv = new double[v.length];
        for (int k = 0; k < v.length; k++) {
            boolean usable =
                    k > 0 && drive.steady(k) && drive.steady(k - 1) && v[k] < SUPPLYING_V && v[k - 1] < SUPPLYING_V;
            double step = usable ? i[k] - i[k - 1] : Double.NaN;
            di[k] = Math.abs(step) >= 3 ? step : Double.NaN;
            dv[k] = usable ? v[k] - v[k - 1] : Double.NaN;
        }
        Line line = Line.through(di, dv);
        if (line == null || line.points() < 15 || line.slope() <= 0 || line.slopeSe() > 0.25 * line.slope()) {
            return;
        }
        Interval milliohm = Interval.ofStandardError(1000 * line.slope(), 1000 * line.slopeSe());
        estimates.put("internalResistanceMilliohm", milliohm);
        Double rated = reference.facts().battery().ratedCrankingA();
        if (rated != null) {
            double f = rated / 1000;
            say("resistance-by-rating/1", new Interval(milliohm.value() * f, milliohm.low() * f, milliohm.high() * f));
        }
    }

    private interface Test {
        boolean holds(double value);
    }

    private static double share(double[] values, Test test) {
        int n = 0;
        int hit = 0;
        for (double v : values) {
            if (!Double.isNaN(v)) {
                n++;
                hit += test.holds(v) ? 1 : 0;
            }
        }
        return n == 0 ? 0 : 100.0 * hit / n;
    }
}
