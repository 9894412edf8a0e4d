package org.voltdocket.diagnosis.cause;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** Finds the evidence and the facts that would settle or sharpen a decision. */
public final class MissingEvidence {

    private final Rulebook book;
    private final CaseInput input;
    private final CaseDecision decision;
    private final Set<EvidenceKind> present = EnumSet.noneOf(EvidenceKind.class);

    private MissingEvidence(Rulebook book, CaseInput input, CaseDecision decision) {
        this.book = book;
        this.input = input;
        this.decision = decision;
        input.evidence().forEach(item -> present.add(item.reading().kind()));
    }

    /**
     * Stable identifiers: facts that can change the decision, kinds of evidence by expected value, other facts.
     *
     * @param decisiveFacts facts that can change the decision
     */
    public static List<String> of(Rulebook book, CaseInput input, CaseDecision decision, List<String> decisiveFacts) {
        MissingEvidence all = new MissingEvidence(book, input, decision);
        Set<String> out = new LinkedHashSet<>(decisiveFacts);
        all.kinds().forEach(kind -> out.add(kind.id()));
        all.facts(out);
        return List.copyOf(out);
    }

    private List<EvidenceKind> kinds() {
        Set<EvidenceKind> kinds = EnumSet.noneOf(EvidenceKind.class);
        boolean notJudged = decision.battery().verdict() == BatteryVerdict.NOT_JUDGED;
        boolean open = decision.leaning() == Leaning.OPEN || decision.leaning() == Leaning.NO_FAULT_SEEN;
        addAbsent(kinds, EvidenceKind.DRIVE_RECORDING, true);
        if (open && startNotCaptured()) {
            kinds.add(EvidenceKind.DRIVE_RECORDING);
        }
        addAbsent(kinds, EvidenceKind.CHARGING_TEST, open);
        boolean cranked = present.contains(EvidenceKind.CRANKING_RECORDING);
        addAbsent(kinds, EvidenceKind.CRANKING_TEST, notJudged && !cranked);
        double drain = LeaningDecision.probability(decision.causes(), Cause.STANDING_DRAIN);
        addAbsent(kinds, EvidenceKind.STANDING_RECORDING, drain >= book.decision(DecisionLimit.MORE_EVIDENCE));
        Stream<EvidenceKind> sorted =
                kinds.stream().sorted(Comparator.comparingDouble((EvidenceKind kind) -> -value(kind)));
        List<EvidenceKind> out = Stream.concat(
                        notJudged ? Stream.of(EvidenceKind.BATTERY_TEST) : Stream.empty(), sorted)
                .toList();
        return out.isEmpty() && decision.leaning() == Leaning.OPEN ? List.of(another()) : out;
    }

    /** Whether no drive shows the start of its engine. */
    private boolean startNotCaptured() {
        List<Double> rows = decision.rules().stream()
                .filter(rule -> rule.rule().quantity().equals("rows-in-start"))
                .map(rule -> rule.finding().value())
                .toList();
        return !rows.isEmpty() && rows.stream().allMatch(n -> n == 0);
    }

    private void addAbsent(Set<EvidenceKind> kinds, EvidenceKind kind, boolean wanted) {
        if (wanted && !present.contains(kind)) {
            kinds.add(kind);
        }
    }

    /** Expected saving by a kind of evidence, min. */
    private double value(EvidenceKind kind) {
        DiagnosticTest test = book.tests().get(kind);
        return test == null ? 0 : TestValue.of(book, test, decision.causes()).minutes();
    }

    /** An open case that has everything above: the kind of evidence of most value that is not there, else another drive. */
    private EvidenceKind another() {
        return Stream.of(EvidenceKind.STANDING_RECORDING, EvidenceKind.CHARGING_TEST, EvidenceKind.CRANKING_TEST)
                .filter(kind -> !present.contains(kind))
                .max(Comparator.comparingDouble(this::value))
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
