package org.voltdocket.diagnosis.quantity.drive;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.Regimes;
import org.voltdocket.kernel.Interval;

/** Measures all quantities of a drive recording. */
public final class DriveQuantities {

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
        double interval = context.drive.grid().recording().durationS()
                / context.drive.grid().recording().rows();
        for (EngineStart start : context.drive.starts()) {
            boolean fastEnough = interval <= 0.12;
            boolean charged = context.socSeen.isEmpty() || context.socSeen.get().value() >= RestVoltage.LOW_CHARGE;
            if (charged && fastEnough) {
                context.add("cranking-minimum", Interval.ofStandardError(start.minimumV(), 0.05));
            }
            return; // the first start is the cold one; later ones find the engine warm
        }
    }
}
