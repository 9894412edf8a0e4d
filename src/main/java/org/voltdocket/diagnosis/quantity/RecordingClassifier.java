package org.voltdocket.diagnosis.quantity;

import java.util.List;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.EngineStartDetector;
import org.voltdocket.diagnosis.regime.EngineState;
import org.voltdocket.diagnosis.signal.Grid;
import org.voltdocket.diagnosis.signal.Robust;

/** Classifies recordings. */
public final class RecordingClassifier {

    private static final double FAST_HZ = 50;
    /** A recording of one start is short, s (ours). */
    private static final double CRANKING_LONGEST_S = 120;
    /** A capacity run takes at least this, A (ours): less is a vehicle asleep. */
    private static final double BENCH_LEAST_A = 0.3;
    /** In a capacity run at least this share of the time shows discharge. */
    private static final double BENCH_SHARE = 0.8;
    /** A capacity run falls by at least this, V (ours). */
    private static final double BENCH_FALL_V = 0.7;

    private RecordingClassifier() {}

    /** See {@link org.voltdocket.diagnosis.assess.Diagnosis#kindOf}. */
    public static EvidenceKind of(Recording recording) {
        Grid grid = Grid.of(recording, 1);
        List<EngineStart> starts = EngineStartDetector.in(grid);
        double hertz = (recording.rows() - 1) / Math.max(1e-9, recording.durationS());
        if (starts.size() == 1 && hertz >= FAST_HZ - 0.5 && recording.durationS() <= CRANKING_LONGEST_S) {
            return EvidenceKind.CRANKING_RECORDING;
        }
        boolean runs = EngineState.seenRunning(grid);
        if (starts.isEmpty() && !runs && bench(grid)) {
            return EvidenceKind.DISCHARGE_RECORDING;
        }
        return runs || !starts.isEmpty() ? EvidenceKind.DRIVE_RECORDING : EvidenceKind.STANDING_RECORDING;
    }

    private static boolean bench(Grid grid) {
        double[] amperes = grid.mean(Channel.MEASURED_A);
        if (amperes == null || grid.recording().has(Channel.ENGINE_RPM)) {
            return false;
        }
        int told = 0;
        int out = 0;
        for (double a : amperes) {
            if (!Double.isNaN(a)) {
                told++;
                out += a < -BENCH_LEAST_A ? 1 : 0;
            }
        }
        double[] v = grid.voltage();
        double fall = Robust.quantile(v, 0.98) - Robust.quantile(v, 0.005);
        return told > 0 && out >= BENCH_SHARE * told && fall >= BENCH_FALL_V;
    }
}
