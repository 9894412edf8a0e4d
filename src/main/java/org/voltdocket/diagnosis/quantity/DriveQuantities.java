package org.voltdocket.diagnosis.quantity;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.Regimes;
import org.voltdocket.diagnosis.regime.Start;
import org.voltdocket.kernel.Interval;

/** Everything that is measured in the recording of a drive. */
public final class DriveQuantities {

    /** Below this a battery is low and a working vehicle charges it, % (common practice: targets lie at 75 to 85 %). */
    static final double LOW_CHARGE = 68;

    private final DriveNotes notes;
    private final List<RegimeSpan> regimes;
    private final Optional<Interval> offset;

    private DriveQuantities(Evidence evidence, Reference reference) {
        Drive drive = new Drive((Recording) evidence.reading(), reference.temperatureC());
        this.notes = new DriveNotes(evidence, drive, reference);
        this.offset = SensorSays.offset(notes);
        double restV = notes.restV.map(Interval::value).orElse(Double.NaN);
        notes.flow = DriveFlow.of(drive, reference, offset.map(DriveQuantities::honestUnlessProven), restV);
        this.regimes = Regimes.cut(drive.grid(), drive.starts(), drive.running(), notes.flow.regimes());
    }

    /** Measures one drive recording. */
    public static DriveQuantities of(Evidence evidence, Reference reference) {
        DriveQuantities all = new DriveQuantities(evidence, reference);
        DriveCharge.measure(all.notes);
        all.starts();
        DriveRestarts.measure(all.notes);
        if (all.notes.drive.steadySteps() >= DriveNotes.FEWEST_STEADY_STEPS) {
            DriveSource.measure(all.notes);
            DriveClaims.measure(all.notes);
            DriveVoltage.measure(all.notes);
            VoltageGap.measure(all.notes);
            LoadSteps.measure(all.notes);
            DriveLift.measure(all.notes);
            DriveRipple.measure(all.notes);
            DriveControl.measure(all.notes, all.offset.orElse(null));
        }
        return all;
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
        for (Start start : notes.drive.starts()) {
            boolean fastEnough = interval <= 0.12;
            boolean charged = notes.socSeen.isEmpty() || notes.socSeen.get().value() >= DriveQuantities.LOW_CHARGE;
            boolean low = start.minimumV() < CrankingLoad.leastVoltage(notes.drive.temperatureC());
            if (charged && (fastEnough || low)) {
                notes.say("cranking-minimum", Interval.ofStandardError(start.minimumV(), 0.05));
            }
            return; // the first start is the cold one; later ones find the engine warm
        }
    }
}
