package org.voltdocket.diagnosis.quantity.drive;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.CrankingReference;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.Regimes;
import org.voltdocket.kernel.Interval;

/** Measures all quantities of a drive recording. */
public final class DriveQuantities {

    /** A least voltage is told by samples that differ at least this often in a second (ours: rows 0.12 s apart). */
    private static final double FEWEST_CHANGES = 7;

    private static final double LEAST_START_S = 0.3;

    private final DriveContext context;
    private final List<RegimeSpan> regimes;
    private final Optional<Interval> offset;

    private DriveQuantities(Evidence evidence, MeasurementContext reference) {
        DriveSignals drive = new DriveSignals((Recording) evidence.reading(), reference.temperatureC());
        this.context = new DriveContext(evidence, drive, reference);
        this.offset = SensorOffsetEstimator.offset(context);
        double restV = context.restV.map(Interval::value).orElse(Double.NaN);
        context.flow = CurrentFlow.of(drive, reference, offset.map(DriveQuantities::honestUnlessProven), restV);
        this.regimes = Regimes.cut(drive.grid(), drive.starts(), drive.running(), context.flow.regimes());
    }

    /** Measures one drive recording. */
    public static DriveQuantities of(Evidence evidence, MeasurementContext reference) {
        DriveQuantities all = new DriveQuantities(evidence, reference);
        ChargeBalance.measure(all.context);
        all.starts();
        if (!Double.isNaN(all.context.drive.identicalShare())) {
            all.context.add("identical-voltages", Interval.exact(100 * all.context.drive.identicalShare()));
        }
        Restarts.measure(all.context);
        TripLength.measure(all.context);
        if (all.context.drive.steadySteps() >= DriveContext.FEWEST_STEADY_STEPS) {
            ChargingSourceQuantities.measure(all.context);
            ReportedValueChecks.measure(all.context);
            GapWhileCharging.measure(all.context);
            VoltageComparison.measure(all.context);
            InternalResistance.measure(all.context);
            VoltageRegulation.measure(all.context);
            ChargingRipple.measure(all.context);
            ControlResponse.measure(all.context, all.offset.orElse(null));
        }
        return all;
    }

    /** The signals that were measured. */
    public DriveSignals signals() {
        return context.drive;
    }

    public List<Measurement> measurements() {
        return context.out;
    }

    /** Estimates by name as the assessment shows them. */
    public Map<String, Interval> estimates() {
        return context.estimates;
    }

    public List<RegimeSpan> regimes() {
        return regimes;
    }

    /** Most sensors are right: an offset whose interval holds zero is not taken off, only its uncertainty kept. */
    private static Interval honestUnlessProven(Interval offset) {
        boolean zero = offset.low() <= 0 && offset.high() >= 0;
        return zero ? Interval.ofStandardError(0, offset.standardError()) : offset;
    }

    private void starts() {
        // the first start is the cold one; later ones find the engine warm
        Optional<EngineStart> first = context.drive.starts().stream().findFirst();
        if (context.drive.steadySteps() > 0) {
            context.add("rows-in-start", Interval.exact(first.map(this::changes).orElse(0)));
        }
        first.filter(start -> changes(start) / lasts(start) >= FEWEST_CHANGES)
                .ifPresent(start -> context.addGiven(
                        start.minimumV() < CrankingReference.leastVoltage(context.drive.temperatureC())
                                ? 1 - context.startedLow()
                                : 1,
                        "cranking-minimum",
                        Interval.ofStandardError(start.minimumV(), 0.05)));
    }

    private static double lasts(EngineStart start) {
        return Math.max(LEAST_START_S, start.toS() - start.fromS());
    }

    /** How many rows of a start have a voltage of their own: a polled value that is held repeats itself. */
    private int changes(EngineStart start) {
        Recording recording = context.drive.grid().recording();
        double[] time = recording.timeS();
        float[] v = recording.channel(Channel.MEASURED_V);
        int changes = 0;
        int row = Math.max(1, Arrays.binarySearch(time, start.fromS()));
        for (; row < time.length && time[row] <= start.toS(); row++) {
            changes += v[row] != v[row - 1] ? 1 : 0;
        }
        return changes;
    }
}
