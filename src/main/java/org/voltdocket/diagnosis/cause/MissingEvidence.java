package org.voltdocket.diagnosis.cause;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Finds the evidence and the facts that would settle or sharpen a decision. */
public final class MissingEvidence {

    private final Rulebook book;
    private final CaseInput input;
    private final CaseDecision decision;
    private final List<String> decisiveFacts;
    private final Set<EvidenceKind> present = EnumSet.noneOf(EvidenceKind.class);

    private MissingEvidence(Rulebook book, CaseInput input, CaseDecision decision, List<String> decisiveFacts) {
        this.book = book;
        this.input = input;
        this.decision = decision;
        this.decisiveFacts = decisiveFacts;
        input.evidence().forEach(item -> present.add(item.reading().kind()));
    }

    /**
     * Stable identifiers: facts that can change the decision, kinds of evidence by expected value, other facts.
     *
     * @param decisiveFacts facts that can change the decision
     */
    public static List<String> of(Rulebook book, CaseInput input, CaseDecision decision, List<String> decisiveFacts) {
        MissingEvidence all = new MissingEvidence(book, input, decision, decisiveFacts);
        Set<String> out = new LinkedHashSet<>(decisiveFacts);
        all.kinds().forEach(kind -> out.add(kind.id()));
        all.facts(out);
        return List.copyOf(out);
    }

    /**
     * Kinds of evidence that are not there and save more time than they take, most useful first; before them what a decision
     * needs whatever it costs: a test of the battery, and where the case is open a look at the charging.
     */
    private List<EvidenceKind> kinds() {
        Set<EvidenceKind> needed = EnumSet.noneOf(EvidenceKind.class);
        boolean charging =
                present.contains(EvidenceKind.DRIVE_RECORDING) || present.contains(EvidenceKind.CHARGING_TEST);
        if (decision.battery().verdict() == BatteryVerdict.NOT_JUDGED) {
            needed.add(EvidenceKind.BATTERY_TEST);
        }
        boolean open = decision.leaning() == Leaning.OPEN;
        if (open && !charging || (open || decision.leaning() == Leaning.NO_FAULT_SEEN) && startNotCaptured()) {
            needed.add(EvidenceKind.DRIVE_RECORDING);
        }
        List<EvidenceKind> useful = book.tests().keySet().stream()
                .filter(kind -> !present.contains(kind) && !needed.contains(kind) && value(kind) > 0)
                .sorted(Comparator.comparingDouble((EvidenceKind kind) -> -value(kind)))
                .toList();
        List<EvidenceKind> out = Stream.concat(needed.stream(), useful.stream()).toList();
        return out.isEmpty() && decisiveFacts.isEmpty() && open ? List.of(another()) : out;
    }

    /** Whether no drive shows the start of its engine. */
    private boolean startNotCaptured() {
        List<Double> rows = decision.rules().stream()
                .filter(rule -> rule.rule().quantity().equals("rows-in-start"))
                .map(rule -> rule.finding().value())
                .toList();
        return !rows.isEmpty() && rows.stream().allMatch(n -> n == 0);
    }

    /** Expected saving by a kind of evidence, min. */
    private double value(EvidenceKind kind) {
        DiagnosticTest test = book.tests().get(kind);
        return test == null ? 0 : TestValue.of(book, test, decision.causes()).minutes();
    }

    /**
     * Where no test saves more time than it takes, an open case needs the one that tells most, though it is there already; a
     * drive if none tells anything.
     */
    private EvidenceKind another() {
        return book.tests().entrySet().stream()
                .filter(test -> test.getKey() != EvidenceKind.BATTERY_TEST)
                .filter(test -> value(test.getKey()) + test.getValue().minutes() > 1e-9)
                .max(Comparator.comparingDouble(test -> value(test.getKey())))
                .map(Map.Entry::getKey)
                .orElse(EvidenceKind.DRIVE_RECORDING);
    }

    private void facts(Set<String> out) {
        var battery = input.facts().battery();
        boolean cranked = input.evidence().stream()
                .map(Evidence::reading)
                .anyMatch(reading -> reading instanceof BatteryTest test && test.crankingCurrentA() != null);
        addUnknown(out, "battery.chemistry", battery.chemistry(), true);
        addUnknown(out, "battery.capacityAh", battery.capacityAh(), true);
        addUnknown(out, "battery.ratedCrankingA", battery.ratedCrankingA(), cranked);
        boolean rated = cranked && battery.ratedCrankingA() != null;
        addUnknown(out, "battery.crankingStandard", battery.crankingStandard(), rated);
        addUnknown(out, "vehicle.chargingControl", input.facts().vehicle().chargingControl(), true);
    }

    private static void addUnknown(Set<String> out, String name, Object value, boolean wanted) {
        if (wanted && value == null) {
            out.add(name);
        }
    }
}
