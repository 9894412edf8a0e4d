package org.voltdocket.secondmodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.voltdocket.demo.GeneratedCase;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.model.GroundTruth;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** The demo's generator as a source of cases; scenario names are its own, in lower case with hyphens. */
public final class DemoCases implements CaseSource {

    /** A row nearer than this to a border of two regimes is not called, s. */
    private static final double BORDER_S = 1.0;

    @Override
    public List<String> scenarios() {
        return Arrays.stream(org.voltdocket.demo.Scenario.values())
                .map(s -> s.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .toList();
    }

    @Override
    public Labelled make(String scenario, long seed) {
        GeneratedCase made = Generator.generate(
                org.voltdocket.demo.Scenario.valueOf(
                        scenario.toUpperCase(Locale.ROOT).replace('-', '_')),
                seed);
        CaseInput input = made.toCaseInput();
        Map<String, Regime[]> regimes = new HashMap<>();
        List<GroundTruth> drives = new ArrayList<>();
        int next = 0;
        for (Evidence item : input.evidence()) {
            if (item.reading() instanceof Recording recording) {
                GroundTruth truth = made.truths().get(next++);
                regimes.put(item.id(), labels(recording, truth));
                if (recording.kind() == EvidenceKind.DRIVE_RECORDING) {
                    drives.add(truth);
                }
            }
        }
        GroundTruth drive = drives.isEmpty() ? null : drives.get(0);
        return new Labelled(
                scenario,
                seed,
                input,
                made.cause(),
                leanings(made.cause()),
                drive == null ? Double.NaN : drive.sensorOffsetA(),
                drive == null ? Double.NaN : drive.chargeStart(),
                drive == null ? Double.NaN : drive.chargeEnd(),
                regimes);
    }

    private static List<Leaning> leanings(Cause cause) {
        return switch (cause) {
            case BATTERY_DEFECT, BATTERY_WORN -> List.of(Leaning.BATTERY_SIDE);
            case CHARGING_SOURCE, CURRENT_SENSOR, CHARGE_CONTROL, WIRING, STANDING_DRAIN ->
                List.of(Leaning.VEHICLE_SIDE);
            case DUTY, MISFIT -> List.of(Leaning.USAGE_SIDE);
            case NONE -> List.of(Leaning.NO_FAULT_SEEN);
        };
    }

    private static Regime[] labels(Recording recording, GroundTruth truth) {
        double[] at = recording.timeS();
        Regime[] labels = new Regime[at.length];
        for (GroundTruth.Span span : truth.spans()) {
            double margin = span.regime() == Regime.CRANKING ? 0 : BORDER_S;
            for (int i = 0; i < at.length; i++) {
                if (at[i] >= span.fromS() + margin && at[i] < span.toS() - margin) {
                    labels[i] = span.regime();
                }
            }
        }
        return labels;
    }
}
