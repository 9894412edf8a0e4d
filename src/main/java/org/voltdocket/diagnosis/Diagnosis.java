package org.voltdocket.diagnosis;

import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The one door of the judge. */
public final class Diagnosis {

    private Diagnosis() {}

    /**
     * Judges a case. Pure: the same input and rule book give the same assessment, whatever the order of the evidence.
     */
    public static Assessment assess(CaseInput input, Rulebook rulebook) {
        throw new UnsupportedOperationException("not yet");
    }

    /**
     * What kind of recording this is: {@link EvidenceKind#DISCHARGE_RECORDING} where a measured current drains the
     * battery steadily, {@link EvidenceKind#CRANKING_RECORDING} where there is one start sampled at 50 Hz or more, {@link
     * EvidenceKind#DRIVE_RECORDING} where there is a start or a running engine, {@link EvidenceKind#STANDING_RECORDING}
     * where the battery rests throughout.
     */
    public static EvidenceKind kindOf(Recording recording) {
        throw new UnsupportedOperationException("not yet");
    }
}
