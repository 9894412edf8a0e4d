package org.voltdocket.diagnosis.quantity.drive;

import org.voltdocket.diagnosis.quantity.sensor.OffsetFitData;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Compares current, voltage and state of charge reported by the vehicle with the voltage at the posts. */
final class ReportedValueChecks {

    /** Below this, no battery that has run for minutes takes charge worth the name, V (common practice). */
    private static final double NO_CHARGE_V = 12.7;

    private final DriveContext context;

    private ReportedValueChecks(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        ReportedValueChecks claims = new ReportedValueChecks(context);
        claims.drainWhileReported();
        claims.drainWhileHeld();
        claims.vehicleSeesCharge();
        claims.reportedSoc();
    }

    /** Share of the running time in which the vehicle reports charging while the posts lie under the rest voltage. */
    private void drainWhileReported() {
        double[] reported = context.drive.reportedA();
        if (reported == null || context.restV.isEmpty()) {
            return;
        }
        double under = context.restV.get().value() - 0.03;
        int n = 0;
        int hit = 0;
        for (int k = 0; k < reported.length; k++) {
            if (context.drive.steady(k) && !Double.isNaN(reported[k])) {
                n++;
                hit += reported[k] > 0.5 && context.drive.voltage()[k] < under ? 1 : 0;
            }
        }
        if (n >= DriveContext.FEWEST_STEADY_STEPS) {
            context.add("reported-charge-under-rest", Interval.exact(100.0 * hit / n));
        }
    }

    /** Share of the time held at charging voltage in which the vehicle reports a discharge. */
    private void drainWhileHeld() {
        if (context.drive.reportedA() == null) {
            return;
        }
        double[] held = OffsetFitData.lastingAtCharge(context.drive, context.drive.reportedA());
        if (Robust.count(held) >= DriveContext.FEWEST_STEADY_STEPS / 2) {
            context.add("reported-drain-while-held", Interval.exact(StepSelection.share(held, a -> a < -0.5)));
        }
    }

    /** Share of the running time in which the vehicle sees charging voltage and charging current, and the posts see neither. */
    private void vehicleSeesCharge() {
        double[] amperes = context.drive.reportedA();
        double[] volts = context.drive.reportedV();
        if (amperes == null || volts == null) {
            return;
        }
        double[] seen = new double[volts.length];
        for (int k = 0; k < seen.length; k++) {
            boolean told = context.drive.steady(k)
                    && StepSelection.calm(context.drive, k)
                    && !Double.isNaN(amperes[k])
                    && !Double.isNaN(volts[k]);
            boolean claims = volts[k] > DriveContext.CHARGE_SEEN_V && amperes[k] > 0;
            seen[k] = told ? (claims && context.drive.voltage()[k] < NO_CHARGE_V ? 1 : 0) : Double.NaN;
        }
        if (Robust.count(seen) >= DriveContext.FEWEST_STEADY_STEPS / 2) {
            context.add("charge-seen-by-vehicle-only", Interval.exact(StepSelection.share(seen, one -> one > 0.5)));
        }
    }

    private void reportedSoc() {
        if (context.drive.reportedSoc() == null || context.socSeen.isEmpty()) {
            return;
        }
        Interval rest = context.socSeen.get();
        context.firstReportedSoc()
                .ifPresent(first -> context.add(
                        "reported-charge-error",
                        new Interval(first - rest.value(), first - rest.high(), first - rest.low())));
    }
}
