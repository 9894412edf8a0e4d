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

/** Everything that is measured in the recording of a drive. */
public final class DriveQuantities {

    private final DriveContext notes;
    private final List<RegimeSpan> regimes;
    private final Optional<Interval> offset;

    private DriveQuantities(Evidence evidence, MeasurementContext reference) {
        DriveSignals drive = new DriveSignals((Recording) evidence.reading(), reference.temperatureC());
        this.notes = new DriveContext(evidence, drive, reference);
        this.offset = SensorOffsetEstimator.offset(notes);
        double restV = notes.restV.map(Interval::value).orElse(Double.NaN);
        notes.flow = CurrentFlow.of(drive, reference, offset.map(DriveQuantities::honestUnlessProven), restV);
        this.regimes = Regimes.cut(drive.grid(), drive.starts(), drive.running(), notes.flow.regimes());
    }

    /** Measures one drive recording. */
    public static DriveQuantities of(Evidence evidence, MeasurementContext reference) {
        DriveQuantities all = new DriveQuantities(evidence, reference);
        ChargeBalance.measure(all.notes);
        all.starts();
        if (!Double.isNaN(all.notes.drive.identicalShare())) {
            all.notes.say("identical-voltages", Interval.exact(100 * all.notes.drive.identicalShare()));
        }
        Restarts.measure(all.notes);
        if (all.notes.drive.steadySteps() >= DriveContext.FEWEST_STEADY_STEPS) {
            ChargingSourceQuantities.measure(all.notes);
            ReportedValueChecks.measure(all.notes);
            GapWhileCharging.measure(all.notes);
            VoltageComparison.measure(all.notes);
            InternalResistance.measure(all.notes);
            VoltageRegulation.measure(all.notes);
            ChargingRipple.measure(all.notes);
            ControlResponse.measure(all.notes, all.offset.orElse(null));
        }
        return all;
    }

    /** The signals that were measured. */
    public DriveSignals signals() {
        return notes.drive;
    }

    public List<Measurement> measurements() {
        return notes.out;
    }

    /** Estimates by name as the assessment shows them. */
    public Map<String, Interval> estimates() {
        return notes.estimates;
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
        double interval = notes.drive.grid().recording().durationS()
                / notes.drive.grid().recording().rows();
        for (EngineStart start : notes.drive.starts()) {
            boolean fastEnough = interval <= 0.12;
            boolean charged = notes.socSeen.isEmpty() || notes.socSeen.get().value() >= RestVoltage.LOW_CHARGE;
            if (charged && fastEnough) {
                notes.say("cranking-minimum", Interval.ofStandardError(start.minimumV(), 0.05));
            }
            return; // the first start is the cold one; later ones find the engine warm
        }
    }
}
