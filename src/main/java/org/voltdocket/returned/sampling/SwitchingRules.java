package org.voltdocket.returned.sampling;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

/**
 * The switching rules (ISO 2859-1:1999, 9.3; from memory). Normal to tightened where 2 of 5 or fewer lots in a row were not
 * accepted; back after 5 accepted in a row; inspection is discontinued where 5 lots on tightened inspection were not accepted.
 * Normal to reduced when the switching score reaches 30 and a person agrees; back after one lot that is not accepted.
 */
public final class SwitchingRules {

    /** Score at which reduced inspection may be agreed to. */
    public static final int SCORE_FOR_REDUCED = 30;

    private static final int WINDOW = 5;
    private static final int LOTS_BACK_TO_NORMAL = 5;
    private static final int LOTS_TO_DISCONTINUE = 5;

    private InspectionSeverity severity = InspectionSeverity.NORMAL;
    private int score;
    private int acceptedInRow;
    private int refusedOnTightened;
    private boolean discontinued;
    private final Deque<Boolean> lately = new ArrayDeque<>();

    /**
     * The state of a source after its lots.
     *
     * @param score the switching score, 0 or more
     * @param discontinued whether no further lots are inspected until the source has taken corrective action
     */
    public record State(InspectionSeverity severity, int score, boolean discontinued) {

        /** Whether reduced inspection may be agreed to. */
        public boolean mayReduce() {
            return severity == InspectionSeverity.NORMAL && !discontinued && score >= SCORE_FOR_REDUCED;
        }
    }

    private SwitchingRules() {}

    /** @param lots decided ones of one scope, oldest first */
    public static State after(List<LotResult> lots) {
        SwitchingRules rules = new SwitchingRules();
        lots.forEach(rules::take);
        return new State(rules.severity, rules.score, rules.discontinued);
    }

    private void take(LotResult lot) {
        if (lot.severity() == InspectionSeverity.REDUCED && severity == InspectionSeverity.NORMAL) {
            severity = InspectionSeverity.REDUCED; // a person agreed when the lot was drawn
        }
        switch (severity) {
            case NORMAL -> onNormal(lot);
            case TIGHTENED -> onTightened(lot);
            case REDUCED -> onReduced(lot);
        }
    }

    private void onNormal(LotResult lot) {
        if (lot.acceptance() >= 2) {
            score = lot.acceptedTighter() ? score + 3 : 0;
        } else {
            score = lot.accepted() ? score + 2 : 0;
        }
        lately.addLast(lot.accepted());
        if (lately.size() > WINDOW) {
            lately.removeFirst();
        }
        if (lately.stream().filter(accepted -> !accepted).count() >= 2) {
            change(InspectionSeverity.TIGHTENED);
        }
    }

    private void onTightened(LotResult lot) {
        acceptedInRow = lot.accepted() ? acceptedInRow + 1 : 0;
        refusedOnTightened += lot.accepted() ? 0 : 1;
        if (refusedOnTightened >= LOTS_TO_DISCONTINUE) {
            discontinued = true;
        } else if (acceptedInRow >= LOTS_BACK_TO_NORMAL) {
            change(InspectionSeverity.NORMAL);
        }
    }

    private void onReduced(LotResult lot) {
        if (!lot.accepted()) {
            change(InspectionSeverity.NORMAL);
        }
    }

    private void change(InspectionSeverity to) {
        severity = to;
        score = 0;
        acceptedInRow = 0;
        refusedOnTightened = 0;
        lately.clear();
    }
}
