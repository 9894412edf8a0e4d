package org.voltdocket.dossier.testing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.ui.TextFormatter;

/**
 * A usual complaint, with the tests worth doing before anything is measured, most informative first. The order is common practice
 * of the trade; as soon as there is evidence, the expected value of each test by the rule book replaces it.
 */
public enum Complaint {
    NO_START("no-start", EvidenceKind.BATTERY_TEST, EvidenceKind.CRANKING_TEST, EvidenceKind.CHARGING_TEST),
    FLAT_AFTER_STANDING(
            "flat-after-standing",
            EvidenceKind.BATTERY_TEST,
            EvidenceKind.STANDING_RECORDING,
            EvidenceKind.CHARGING_TEST),
    WARNING_LAMP("warning-lamp", EvidenceKind.CHARGING_TEST, EvidenceKind.BATTERY_TEST, EvidenceKind.DRIVE_RECORDING),
    FLICKERING("flickering", EvidenceKind.CHARGING_TEST, EvidenceKind.DRIVE_RECORDING, EvidenceKind.BATTERY_TEST),
    REPLACED_AGAIN(
            "replaced-again", EvidenceKind.BATTERY_TEST, EvidenceKind.DRIVE_RECORDING, EvidenceKind.CHARGING_TEST),
    NO_STOP_START("no-stop-start", EvidenceKind.BATTERY_TEST, EvidenceKind.DRIVE_RECORDING);

    /** Where the complaint is none of these, or not known. */
    static final List<EvidenceKind> USUAL =
            List.of(EvidenceKind.BATTERY_TEST, EvidenceKind.CHARGING_TEST, EvidenceKind.CRANKING_TEST);

    private final String id;
    private final List<EvidenceKind> tests;

    Complaint(String id, EvidenceKind... tests) {
        this.id = id;
        this.tests = List.of(tests);
    }

    /** The complaint whose sentence the text of the case contains. */
    static Optional<Complaint> of(String text, TextFormatter words) {
        String told = text == null ? "" : text.toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(one -> told.contains(words.of("complaint-kind", one.id).toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    public String id() {
        return id;
    }

    List<EvidenceKind> tests() {
        return tests;
    }
}
