package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.rulebook.Sentences;

/** What to do next, and what evidence or facts would settle or sharpen the verdict. */
public final class Advice {

    private Advice() {}

    /** Identifiers of what is missing: kinds of evidence, then names of facts. */
    public static List<String> missing(
            Rulebook book, CaseInput input, BatteryReason battery, Leaning leaning, List<RankedCause> causes) {
        Set<EvidenceKind> there = EnumSet.noneOf(EvidenceKind.class);
        boolean rated = false;
        for (Evidence item : input.evidence()) {
            there.add(item.reading().kind());
            rated |= item.reading() instanceof BatteryTest test && test.crankingCurrentA() != null;
        }
        Set<String> out = new LinkedHashSet<>();
        boolean untested = battery.verdict() == BatteryVerdict.NOT_JUDGED;
        if (untested) {
            out.add(EvidenceKind.BATTERY_TEST.id());
        }
        if (!there.contains(EvidenceKind.DRIVE_RECORDING)) {
            out.add(EvidenceKind.DRIVE_RECORDING.id());
        }
        boolean open = leaning == Leaning.OPEN || leaning == Leaning.NO_FAULT_SEEN;
        if (open && !there.contains(EvidenceKind.CHARGING_TEST)) {
            out.add(EvidenceKind.CHARGING_TEST.id());
        }
        if (untested
                && !there.contains(EvidenceKind.CRANKING_TEST)
                && !there.contains(EvidenceKind.CRANKING_RECORDING)) {
            out.add(EvidenceKind.CRANKING_TEST.id());
        }
        double drain = LeaningDecision.probability(causes, Cause.STANDING_DRAIN);
        if (drain >= book.decision(DecisionLimit.MORE_EVIDENCE) && !there.contains(EvidenceKind.STANDING_RECORDING)) {
            out.add(EvidenceKind.STANDING_RECORDING.id());
        }
        if (leaning == Leaning.OPEN && out.isEmpty()) {
            out.add(another(there).id());
        }
        facts(input, rated, out);
        return List.copyOf(out);
    }

    /** Where everything asked for is there and the case is open all the same: what is not there yet, else another drive. */
    private static EvidenceKind another(Set<EvidenceKind> there) {
        return Stream.of(EvidenceKind.STANDING_RECORDING, EvidenceKind.CHARGING_TEST, EvidenceKind.CRANKING_TEST)
                .filter(kind -> !there.contains(kind))
                .findFirst()
                .orElse(EvidenceKind.DRIVE_RECORDING);
    }

    private static void facts(CaseInput input, boolean rated, Set<String> out) {
        var battery = input.facts().battery();
        var vehicle = input.facts().vehicle();
        if (battery.chemistry() == null) {
            out.add("battery.chemistry");
        }
        if (battery.capacityAh() == null) {
            out.add("battery.capacityAh");
        }
        if (rated && battery.ratedCrankingA() == null) {
            out.add("battery.ratedCrankingA");
        }
        if (rated && battery.ratedCrankingA() != null && battery.crankingStandard() == null) {
            out.add("battery.crankingStandard");
        }
        if (vehicle.chargingControl() == null) {
            out.add("vehicle.chargingControl");
        }
    }

    /** Sentences, most useful first. */
    public static List<String> nextSteps(
            Rulebook book, BatteryReason battery, Leaning leaning, List<RankedCause> causes, List<String> missing) {
        List<String> out = new ArrayList<>();
        if (leaning == Leaning.CONTRADICTORY) {
            out.add(Sentences.plain("next.contradictory"));
        }
        if (battery == BatteryReason.TOO_DISCHARGED) {
            out.add(Sentences.plain("next.too-discharged"));
        }
        for (RankedCause cause : causes) {
            boolean first = cause == causes.get(0);
            boolean worth = first && leaning != Leaning.OPEN;
            if (worth || cause.probability() >= book.decision(DecisionLimit.NEXT_STEP) && cause.cause() != Cause.NONE) {
                out.add(Sentences.plain("next." + cause.cause().id()));
            }
        }
        for (String one : missing) {
            if (!one.contains(".")
                    && !(one.equals(EvidenceKind.BATTERY_TEST.id()) && battery == BatteryReason.TOO_DISCHARGED)) {
                out.add(Sentences.plain("missing." + one));
            }
        }
        if (missing.stream().anyMatch(m -> m.contains("."))) {
            out.add(Sentences.plain("missing.facts"));
        }
        return List.copyOf(out);
    }

    /** The verdict in one sentence. */
    public static String said(BatteryReason battery, Leaning leaning, List<RankedCause> causes) {
        RankedCause first = causes.get(0);
        return Sentences.plain("verdict." + leaning.id())
                .replace("{battery}", Sentences.plain("battery." + battery.id()))
                .replace("{cause}", Sentences.plain("cause." + first.cause().id()))
                .replace("{percent}", percent(first.probability()));
    }

    /** Nothing that is judged is certain, so that rounding makes no hundred of it. */
    private static String percent(double probability) {
        if (probability > 0.999) {
            return "over 99.9";
        }
        return probability >= 0.995
                ? String.format(Locale.ROOT, "%.1f", Math.floor(1000 * probability) / 10)
                : Sentences.number(100 * probability, "%");
    }
}
