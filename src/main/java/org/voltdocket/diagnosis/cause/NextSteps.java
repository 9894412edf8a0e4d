package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.rulebook.Sentences;

/**
 * Derives the next steps from the decision. While no cause is probable enough to act on, tests come before checks. A repair is recommended only for the side that the case leans to; checks of the
 * vehicle are recommended for each of its causes that is probable enough; a test says what its results would mean.
 */
public final class NextSteps {

    private NextSteps() {}

    /**
     * Sentences, most useful first.
     *
     * @param missing see {@link MissingEvidence}
     * @param decisiveFacts how many of them, at the beginning, are facts that can change the decision
     */
    public static List<String> of(Rulebook book, CaseDecision decision, List<String> missing, int decisiveFacts) {
        Set<String> out = new LinkedHashSet<>();
        if (decision.leaning() == Leaning.CONTRADICTORY) {
            out.add(Sentences.plain("next.contradictory"));
            return List.copyOf(out);
        }
        missing.subList(0, decisiveFacts).forEach(fact -> out.add(Sentences.plain("missing." + fact)));
        boolean discharged = decision.battery() == BatteryReason.TOO_DISCHARGED;
        if (discharged) {
            out.add(Sentences.plain("next.too-discharged"));
        }
        List<String> checks = checks(book, decision);
        List<String> tests = new ArrayList<>();
        for (String one : missing) {
            boolean repeated = discharged && one.equals(EvidenceKind.BATTERY_TEST.id());
            if (!one.contains(".") && !repeated) {
                tests.add(test(book, decision, EvidenceKind.of(one)));
            }
        }
        boolean known = decision.causes().get(0).probability() >= book.decision(DecisionLimit.FIRST_CAUSE);
        boolean testsFirst = decision.leaning() == Leaning.OPEN && !known;
        out.addAll(testsFirst ? tests : checks);
        out.addAll(testsFirst ? checks : tests);
        if (missing.stream().skip(decisiveFacts).anyMatch(one -> one.contains("."))) {
            out.add(Sentences.plain("missing.facts"));
        }
        return List.copyOf(out);
    }

    /** The checks and repairs of the causes that are probable enough, most probable first. */
    private static List<String> checks(Rulebook book, CaseDecision decision) {
        List<String> out = new ArrayList<>();
        for (RankedCause cause : decision.causes()) {
            boolean first = cause == decision.causes().get(0);
            if (applies(decision.leaning(), cause.cause())
                    && (first || cause.probability() >= book.decision(DecisionLimit.NEXT_STEP))) {
                out.add(Sentences.plain("next." + cause.cause().id()));
            }
        }
        return out;
    }

    /** Whether the step for a cause agrees with the leaning: only checks of the vehicle are made while a case is open. */
    private static boolean applies(Leaning leaning, Cause cause) {
        return switch (cause) {
            case BATTERY_DEFECT, BATTERY_WORN -> leaning == Leaning.BATTERY_SIDE;
            case DUTY, MISFIT -> leaning == Leaning.USAGE_SIDE;
            case NONE -> leaning == Leaning.NO_FAULT_SEEN;
            case CHARGING_SOURCE, CURRENT_SENSOR, CHARGE_CONTROL, WIRING, STANDING_DRAIN ->
                leaning != Leaning.NO_FAULT_SEEN;
        };
    }

    private static String test(Rulebook book, CaseDecision decision, EvidenceKind kind) {
        String step = Sentences.plain("missing." + kind.id());
        DiagnosticTest test = book.tests().get(kind);
        if (test == null) {
            return step;
        }
        TestValue value = TestValue.of(book, test, decision.causes());
        return step + " "
                + Sentences.plain("next.meaning")
                        .replace("{outside}", cause(value.outside()))
                        .replace("{inside}", cause(value.inside()));
    }

    private static String cause(RankedCause cause) {
        return Sentences.plain("cause." + cause.cause().id()) + " (" + VerdictSentence.percent(cause.probability())
                + " %)";
    }
}
