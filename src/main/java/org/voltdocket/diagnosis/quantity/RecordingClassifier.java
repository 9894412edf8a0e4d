package org.voltdocket.diagnosis.quantity;

import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.regime.EngineStart;
import org.voltdocket.diagnosis.regime.EngineStartDetector;
import org.voltdocket.diagnosis.regime.EngineState;
import org.voltdocket.diagnosis.signal.Grid;

/** Classifies recordings. */
public final class RecordingClassifier {

    private static final double FAST_HZ = 50;
    /** A recording of one start is short, s (ours). */
    private static final double CRANKING_LONGEST_S = 120;

    private RecordingClassifier() {}

    /** See {@link org.voltdocket.diagnosis.assess.Diagnosis#kindOf}. */
    public static EvidenceKind of(Recording recording) {
        Grid grid = Grid.of(recording, 1);
        List<EngineStart> starts = EngineStartDetector.in(grid);
        double hertz = (recording.rows() - 1) / Math.max(1e-9, recording.durationS());
        if (starts.size() == 1 && hertz >= FAST_HZ - 0.5 && recording.durationS() <= CRANKING_LONGEST_S) {
            return EvidenceKind.CRANKING_RECORDING;
        }
        if (BenchDischarge.of(recording).isPresent()) {
            return EvidenceKind.DISCHARGE_RECORDING;
        }
        boolean runs = EngineState.seenRunning(grid);
        return runs || !starts.isEmpty() ? EvidenceKind.DRIVE_RECORDING : EvidenceKind.STANDING_RECORDING;
    }
}
