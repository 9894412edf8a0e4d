package org.voltdocket.returned.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.voltdocket.returned.sampling.InspectionSeverity.NORMAL;
import static org.voltdocket.returned.sampling.InspectionSeverity.REDUCED;
import static org.voltdocket.returned.sampling.InspectionSeverity.TIGHTENED;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.returned.sampling.SwitchingRules.State;

/** The switching rules of ISO 2859-1, 9.3, from memory. */
class SwitchingRulesTest {

    private static LotResult lot(InspectionSeverity severity, boolean accepted) {
        return new LotResult(severity, 1, accepted, accepted);
    }

    private static State after(InspectionSeverity severity, String lots) {
        return SwitchingRules.after(
                lots.chars().mapToObj(c -> lot(severity, c == '+')).toList());
    }

    @Test
    void twoOfFiveNotAcceptedTighten() {
        assertThat(after(NORMAL, "").severity()).isEqualTo(NORMAL);
        assertThat(after(NORMAL, "-").severity()).isEqualTo(NORMAL);
        assertThat(after(NORMAL, "--").severity()).isEqualTo(TIGHTENED);
        assertThat(after(NORMAL, "-+++-").severity()).isEqualTo(TIGHTENED);
        assertThat(after(NORMAL, "-++++-").severity()).isEqualTo(NORMAL);
    }

    @Test
    void fiveAcceptedInARowLeadBackAndFiveNotAcceptedEnd() {
        assertThat(after(NORMAL, "--++++").severity()).isEqualTo(TIGHTENED);
        assertThat(after(NORMAL, "--+++++").severity()).isEqualTo(NORMAL);
        assertThat(after(NORMAL, "--++-+++++").severity()).isEqualTo(NORMAL);
        assertThat(after(NORMAL, "--" + "----").discontinued()).isFalse();
        assertThat(after(NORMAL, "--" + "+-+-+-+-+-").discontinued()).isTrue();
    }

    @Test
    void thirtyPointsAllowReducedWhichOneLotNotAcceptedEnds() {
        assertThat(after(NORMAL, "+".repeat(14)).mayReduce()).isFalse();
        assertThat(after(NORMAL, "+".repeat(15))).isEqualTo(new State(NORMAL, 30, false));
        assertThat(after(NORMAL, "+".repeat(15)).mayReduce()).isTrue();
        assertThat(after(NORMAL, "+".repeat(14) + "-").score()).isZero();
        List<LotResult> lots = new ArrayList<>(Collections.nCopies(15, lot(NORMAL, true)));
        lots.add(lot(REDUCED, true));
        assertThat(SwitchingRules.after(lots).severity()).isEqualTo(REDUCED);
        lots.add(lot(REDUCED, false));
        assertThat(SwitchingRules.after(lots)).isEqualTo(new State(NORMAL, 0, false));
    }

    @Test
    void fromTwoAllowedOnThreePointsAreEarnedAtTheTighterAqlOnly() {
        LotResult well = new LotResult(NORMAL, 2, true, true);
        assertThat(SwitchingRules.after(Collections.nCopies(10, well)).score()).isEqualTo(30);
        assertThat(SwitchingRules.after(List.of(well, new LotResult(NORMAL, 2, true, false)))
                        .score())
                .isZero();
    }
}
