package org.voltdocket.demo;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.demo.model.GroundTruth;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.kernel.Vin;

/**
 * An invented case with its ground truth.
 *
 * @param items evidence in the order of measurement
 * @param truths ground truth of each recording, in the order of the recordings among {@code items}
 */
public record GeneratedCase(
        Scenario scenario,
        long seed,
        BatterySerial serial,
        Vin vin,
        Facts facts,
        List<GeneratedItem> items,
        List<GroundTruth> truths) {

    public GeneratedCase {
        items = List.copyOf(items);
        truths = List.copyOf(truths);
    }

    /** The true cause. */
    public Cause cause() {
        return scenario.cause();
    }

    /** When the first test was taken. */
    OffsetDateTime takenAt() {
        return items.stream()
                .map(GeneratedItem::reading)
                .filter(BatteryTest.class::isInstance)
                .map(reading -> ((BatteryTest) reading).takenAt())
                .findFirst()
                .orElseThrow();
    }

    /** The case as the judge takes it, with no other case known of this battery and vehicle. */
    public CaseInput toCaseInput() {
        List<Evidence> evidence = new ArrayList<>();
        for (GeneratedItem item : items) {
            Sha256 digest = Sha256.of(item.content());
            evidence.add(new Evidence(
                    Evidence.id(serial, vin, digest).toString(), digest, Origin.WORKSHOP, item.reading()));
        }
        return new CaseInput(facts, History.NONE, evidence);
    }
}
