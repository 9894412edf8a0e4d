package org.voltdocket.diagnosis.cause;

import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.rulebook.Sentences;

/** Finds evidence that cannot belong together; each contradiction is a finding without a number. */
public final class Contradictions {

    /** Two charged tests closer than this should agree. */
    private static final Duration CLOSE = Duration.ofDays(2);
    /** Cranking currents of one battery do not differ by more than this within two days (ours). */
    private static final double FACTOR = 1.6;
    /** Rest voltages this close mean the same charge, V (ours). */
    private static final double SAME_CHARGE_V = 0.1;

    private Contradictions() {}

    /** Whether any of these findings says that tests of the battery contradict each other. */
    public static boolean ofBattery(List<Finding> contradictions) {
        return contradictions.stream()
                .anyMatch(f ->
                        f.rule().equals("charged-tests-disagree") || f.rule().equals("rest-voltages-disagree"));
    }

    /** Day a reading was taken, or null if the file does not say. */
    public static LocalDate day(Evidence item) {
        OffsetDateTime at = at(item);
        return at == null ? null : at.toLocalDate();
    }

    private static OffsetDateTime at(Evidence item) {
        if (item.reading() instanceof BatteryTest test) {
            return test.takenAt();
        }
        if (item.reading() instanceof CrankingTest test) {
            return test.takenAt();
        }
        if (item.reading() instanceof ChargingTest test) {
            return test.takenAt();
        }
        return ((Recording) item.reading()).startedAt().orElse(null);
    }

    /**
     * @param evidence in canonical order
     */
    public static List<Finding> in(CaseInput input, List<Evidence> evidence) {
        List<Finding> out = new ArrayList<>();
        LocalDate produced = input.facts().battery().producedOn();
        for (Evidence item : evidence) {
            LocalDate day = day(item);
            if (produced != null && day != null && day.isBefore(produced)) {
                out.add(finding("evidence-before-production", item));
            }
            if (input.history().underAnotherSerial().contains(item.sha256())) {
                out.add(finding("recording-under-another-serial", item));
            }
        }
        for (int i = 0; i < evidence.size(); i++) {
            for (int j = i + 1; j < evidence.size(); j++) {
                if (disagree(evidence.get(i), evidence.get(j))) {
                    out.add(finding("charged-tests-disagree", evidence.get(j)));
                }
                Evidence second = evidence.get(j);
                ConcurrentReadings.between(evidence.get(i), second, input.facts())
                        .map(id -> finding(id, second))
                        .filter(found ->
                                out.stream().noneMatch(known -> known.id().equals(found.id())))
                        .ifPresent(out::add);
            }
        }
        return out;
    }

    private static boolean disagree(Evidence one, Evidence other) {
        if (!(one.reading() instanceof BatteryTest a) || !(other.reading() instanceof BatteryTest b)) {
            return false;
        }
        boolean comparable = Boolean.TRUE.equals(a.chargedBefore())
                && Boolean.TRUE.equals(b.chargedBefore())
                && a.crankingCurrentA() != null
                && b.crankingCurrentA() != null
                && a.crankingStandard() == b.crankingStandard()
                && Math.abs(a.restVoltageV() - b.restVoltageV()) <= SAME_CHARGE_V;
        if (!comparable || Duration.between(a.takenAt(), b.takenAt()).abs().compareTo(CLOSE) > 0) {
            return false;
        }
        double ratio = a.crankingCurrentA() / b.crankingCurrentA();
        return ratio > FACTOR || ratio < 1 / FACTOR;
    }

    private static Finding finding(String id, Evidence item) {
        return new Finding(
                id + "/" + item.sha256().hex().substring(0, 8),
                id,
                item.id(),
                id,
                null,
                null,
                null,
                "",
                null,
                null,
                "is",
                Result.OUTSIDE,
                Sentences.plain("contradiction.source"),
                Sentences.plain("contradiction." + id));
    }
}
