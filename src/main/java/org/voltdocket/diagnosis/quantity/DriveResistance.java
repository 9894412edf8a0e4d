package org.voltdocket.diagnosis.quantity;

import org.voltdocket.diagnosis.signal.Line;
import org.voltdocket.kernel.Interval;

/** The battery's resistance from steps of the load. */
final class DriveResistance {

    /** Above this the battery's charging side adds to the resistance, V. */
    private static final double SUPPLYING_V = 12.9;

    private final DriveNotes notes;

    private DriveResistance(DriveNotes notes) {
        this.notes = notes;
    }

    static void measure(DriveNotes notes) {
        if (notes.drive.measuredA() != null) {
            new DriveResistance(notes).resistance();
        }
    }

    /** Slope of voltage steps over current steps, clamp only: the reported current comes too late and too coarse. */
    private void resistance() {
        double[] i = notes.drive.measuredA();
        double[] v = notes.drive.grid().voltage();
        double[] di = new double[v.length];
        double[] dv = new double[v.length];
        for (int k = 0; k < v.length; k++) {
            boolean usable = k > 0
                    && notes.drive.steady(k)
                    && notes.drive.steady(k - 1)
                    && v[k] < SUPPLYING_V
                    && v[k - 1] < SUPPLYING_V;
            double step = usable ? i[k] - i[k - 1] : Double.NaN;
            di[k] = Math.abs(step) >= 3 ? step : Double.NaN;
            dv[k] = usable ? v[k] - v[k - 1] : Double.NaN;
        }
        Line line = Line.through(di, dv);
        if (line == null || line.points() < 15 || line.slope() <= 0 || line.slopeSe() > 0.25 * line.slope()) {
            return;
        }
        Interval milliohm = Interval.ofStandardError(1000 * line.slope(), 1000 * line.slopeSe());
        notes.estimates.put("internalResistanceMilliohm", milliohm);
        Double rated = notes.reference.facts().battery().ratedCrankingA();
        if (rated != null) {
            double f = rated / 1000;
            notes.say(
                    "resistance-by-rating/1",
                    new Interval(milliohm.value() * f, milliohm.low() * f, milliohm.high() * f));
        }
    }
}
