package org.voltdocket.diagnosis.quantity.bench;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.BenchDischarge;
import org.voltdocket.diagnosis.quantity.CrankingReference;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.EngineStartDetector;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;
import org.voltdocket.kernel.Interval;

/** Capacity runs on the bench, and single starts recorded fast. */
public final class BenchQuantities {

    /** Less beside the discharge than this share is no part of a cycle. */
    private static final double WHOLE = 0.9;
    /** A charger gives more than this, A (ours). */
    private static final double CHARGES_A = 0.1;

    private BenchQuantities() {}

    /** Least voltage of a start recorded fast. */
    public static List<Measurement> cranking(Evidence evidence, MeasurementContext reference, boolean charged) {
        Recording recording = (Recording) evidence.reading();
        List<EngineStart> starts = EngineStartDetector.in(Grid.of(recording, 1));
        if (starts.isEmpty()) {
            return List.of();
        }
        double least = starts.get(0).minimumV();
        double celsius = reference.temperatureC();
        boolean low = least < CrankingReference.leastVoltage(celsius);
        return low && !charged
                ? List.of()
                : List.of(Measurement.of("cranking-minimum", evidence, Interval.ofStandardError(least, 0.05))
                        .at(celsius));
    }

    /** The course of a start recorded fast: sag, plateau, compressions, recovery; nothing where there is no start. */
    public static List<Measurement> course(Evidence evidence, MeasurementContext reference) {
        return EngineStartDetector.in(Grid.of((Recording) evidence.reading(), 1)).stream()
                .findFirst()
                .map(start -> CrankingWaveform.of(evidence, start, reference.temperatureC()))
                .orElse(List.of());
    }

    /** A capacity run with its gaps. */
    public static List<Measurement> run(Evidence evidence, MeasurementContext reference) {
        return DischargeRun.of((Recording) evidence.reading())
                .measurements(evidence, reference.facts().battery().capacityAh());
    }

    /** What several capacity runs say together; {@code evidence} in canonical order. */
    public static List<Measurement> runs(List<Evidence> evidence) {
        return CapacityRunComparison.of(evidence);
    }

    /** Cranking between rest and whatever follows. */
    public static List<RegimeSpan> crankingRegimes(Recording recording) {
        double first = recording.timeS()[0];
        double last = recording.timeS()[recording.rows() - 1];
        List<RegimeSpan> out = new ArrayList<>();
        double from = first;
        boolean started = false;
        for (EngineStart start : EngineStartDetector.in(Grid.of(recording, 1))) {
            if (start.fromS() > from) {
                out.add(new RegimeSpan(from, start.fromS(), started ? Regime.UNKNOWN : Regime.REST));
            }
            out.add(new RegimeSpan(Math.max(from, start.fromS()), Math.min(last, start.toS() + 0.02), Regime.CRANKING));
            from = Math.min(last, start.toS() + 0.02);
            started = true;
        }
        if (last > from) {
            boolean lifted = started && charging(recording, from);
            out.add(new RegimeSpan(from, last, !started ? Regime.REST : lifted ? Regime.CHARGING : Regime.UNKNOWN));
        }
        return out;
    }

    private static boolean charging(Recording recording, double from) {
        double[] time = recording.timeS();
        double[] tail = DischargeRun.wide(recording.channel(Channel.MEASURED_V), 1);
        for (int i = 0; i < tail.length && time[i] < from + 1; i++) {
            tail[i] = Double.NaN;
        }
        return Robust.median(tail) > 13.25;
    }

    /** The battery supplies throughout, or after a charge and a rest. */
    public static List<RegimeSpan> dischargeRegimes(Recording recording) {
        double[] t = recording.timeS();
        double first = t[0];
        double last = t[t.length - 1];
        BenchDischarge part = BenchDischarge.of(recording).orElse(new BenchDischarge(0, t.length));
        double from = t[part.from()];
        double to = t[part.to() - 1];
        boolean whole = to - from >= WHOLE * (last - first);
        List<RegimeSpan> out = new ArrayList<>();
        if (!whole && from > first) {
            double charged = chargedUntil(recording, part.from());
            if (charged > first) {
                out.add(new RegimeSpan(first, charged, Regime.CHARGING));
            }
            if (from > charged) {
                out.add(new RegimeSpan(charged, from, Regime.REST));
            }
        }
        out.add(new RegimeSpan(whole ? first : from, whole ? last : to, Regime.DISCHARGING));
        if (!whole && last > to) {
            out.add(new RegimeSpan(to, last, Regime.REST));
        }
        return out;
    }

    /** Time of the last row before a discharge in which a current enters the battery; that of the first row where none does. */
    private static double chargedUntil(Recording recording, int end) {
        float[] amperes = recording.channel(Channel.MEASURED_A);
        int row = end - 1;
        while (row > 0 && !(amperes[row] > CHARGES_A)) {
            row--;
        }
        return recording.timeS()[Math.max(0, row)];
    }
}
