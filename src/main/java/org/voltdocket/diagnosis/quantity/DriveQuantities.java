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
        Drive drive = new Drive((Recording) evidence.reading(), reference.temperatureC(), reference.methods());
        this.notes = new DriveNotes(evidence, drive, reference);
        this.offset = offset();
        double restV = notes.restV.map(Interval::value).orElse(Double.NaN);
        notes.flow = DriveFlow.of(drive, reference, offset.map(DriveQuantities::honestUnlessProven), restV);
        this.regimes = Regimes.cut(drive.grid(), drive.starts(), drive.running(), notes.flow.regimes());
    }

    /** Measures one drive recording. */
    public static DriveQuantities of(Evidence evidence, Reference reference) {
        DriveQuantities all = new DriveQuantities(evidence, reference);
        all.charge();
        all.starts();
        DriveRestarts.measure(all.notes);
        if (all.notes.drive.steadySteps() >= DriveNotes.FEWEST_STEADY_STEPS) {
            DriveSource.measure(all.notes);
            DriveClaims.measure(all.notes);
            if (all.notes.newer()) {
                all.newer();
            } else {
                DriveVoltage.measure(all.notes);
                DriveResistance.measure(all.notes);
            }
        }
        return all;
    }

    private void newer() {
        DriveVoltage.measure(notes);
        VoltageGap.measure(notes);
        LoadSteps.measure(notes);
        DriveLift.measure(notes);
        DriveRipple.measure(notes);
        DriveControl.measure(notes, offset.orElse(null));
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

    private Optional<Interval> offset() {
        return notes.newer() ? SensorSays.offset(notes) : firstOffset();
    }

    private Optional<Interval> firstOffset() {
        Optional<SensorOffset.Result> clamp = SensorOffset.byClamp(notes.drive);
        // a fit beside a clamp would decide nothing, and it is the costlier of the two
        Optional<Interval> fit = clamp.isPresent()
                ? Optional.empty()
                : SensorFit.offset(
                        notes.drive, RestVoltage.slope(notes.reference.chemistry(), 60), notes.reference.capacityAh());
        if (clamp.isPresent()) {
            notes.say("sensor-offset-by-clamp/1", clamp.get().offsetA());
            if (clamp.get().gain() != null) {
                notes.say("sensor-gain/1", clamp.get().gain());
            }
        } else {
            fit.ifPresent(f -> notes.say("sensor-offset-by-fit/1", f));
        }
        Optional<Interval> best = clamp.map(SensorOffset.Result::offsetA).or(() -> fit);
        best.ifPresent(b -> notes.estimates.put("sensorOffsetA", b));
        return best;
    }

    /** Most sensors are right: an offset whose interval holds zero is not taken off, only its uncertainty kept. */
    private static Interval honestUnlessProven(Interval offset) {
        boolean zero = offset.low() <= 0 && offset.high() >= 0;
        return zero ? Interval.ofStandardError(0, offset.standardError()) : offset;
    }

    private void charge() {
        if (notes.newer()) {
            DriveCharge.measure(notes);
        } else {
            firstCharge();
        }
    }

    private void firstCharge() {
        notes.socStart.ifPresent(soc -> {
            notes.estimates.put("socStartPct", soc);
            notes.say("charge-before-drive/1", soc);
        });
        if (notes.flow.current() == null) {
            return;
        }
        double[] current = notes.flow.current();
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
        double hours = current.length * notes.drive.grid().stepS() / 3600;
        Interval net = Interval.ofStandardError(sum / n * hours, notes.flow.currentSe() * hours);
        notes.estimates.put("netChargeAh", net);
        notes.socStart.ifPresent(soc -> {
            double moved = 100 * net.value() / notes.reference.capacityAh();
            double se = 100 * net.standardError() / notes.reference.capacityAh();
            double end = clip(soc.value() + moved);
            double low = clip(soc.low() + moved - 2 * se);
            double high = clip(soc.high() + moved + 2 * se);
            notes.estimates.put("socEndPct", new Interval(end, Math.min(low, end), Math.max(high, end)));
        });
    }

    private static double clip(double percent) {
        return Math.max(0, Math.min(100, percent));
    }

    private void starts() {
        double interval = notes.drive.grid().recording().durationS()
                / notes.drive.grid().recording().rows();
        for (Start start : notes.drive.starts()) {
            boolean fastEnough = interval <= 0.12;
            boolean charged = notes.socSeen.isEmpty() || notes.socSeen.get().value() >= DriveQuantities.LOW_CHARGE;
            boolean low = start.minimumV() < CrankingLoad.leastVoltage(notes.drive.temperatureC());
            if (charged && (fastEnough || low)) {
                notes.say("cranking-minimum/1", Interval.ofStandardError(start.minimumV(), 0.05));
            }
            return; // the first start is the cold one; later ones find the engine warm
        }
    }
}
