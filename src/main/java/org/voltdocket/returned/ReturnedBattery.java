package org.voltdocket.returned;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.returned.bench.StepRecord;

/**
 * A returned battery with everything recorded for it.
 *
 * @param number short, for its label: {@code R-000017}
 * @param pallet number of the pallet it arrived on
 * @param days whole days since it arrived
 * @param warnings current warnings
 * @param file the case that its evidence joins
 * @param cases every case of the battery, newest first
 * @param facts of the battery, from that case
 * @param supplier name of the manufacturer, according to the catalogue on arrival
 * @param type code of its type, according to the catalogue on arrival
 * @param batch according to the catalogue on arrival
 * @param conditions visual inspections, the latest last
 * @param places storage places, the latest last
 * @param steps of the bench, in the order recorded
 * @param evidence files of the bench, in the order received
 * @param outcomes the latest last
 */
public record ReturnedBattery(
        UUID id,
        String number,
        BatterySerial serial,
        Optional<String> pallet,
        Instant arrivedAt,
        String bookedBy,
        long days,
        List<ArrivalWarning> warnings,
        Optional<CaseReference> file,
        List<CaseListItem> cases,
        BatteryFacts facts,
        Optional<String> supplier,
        Optional<String> type,
        Optional<String> batch,
        List<BatteryCondition> conditions,
        List<Place> places,
        List<StepRecord> steps,
        List<EvidenceItem> evidence,
        List<RecordedOutcome> outcomes) {

    /** Where it was put in the store. */
    public record Place(String name, Instant at, String by) {}

    public ReturnedBattery {
        warnings = List.copyOf(warnings);
        cases = List.copyOf(cases);
        conditions = List.copyOf(conditions);
        places = List.copyOf(places);
        steps = List.copyOf(steps);
        evidence = List.copyOf(evidence);
        outcomes = List.copyOf(outcomes);
    }

    /** How it looked last. */
    public Optional<BatteryCondition> condition() {
        return last(conditions);
    }

    /** A storage place. */
    public Optional<Place> place() {
        return last(places);
    }

    /** The outcome that counts. */
    public Optional<RecordedOutcome> outcome() {
        return last(outcomes);
    }

    /** Whether the bench added a test or recording. */
    public boolean tested() {
        return evidence.stream().anyMatch(item -> item.kind() != org.voltdocket.diagnosis.EvidenceKind.DOCUMENT);
    }

    private static <T> Optional<T> last(List<T> all) {
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }
}
