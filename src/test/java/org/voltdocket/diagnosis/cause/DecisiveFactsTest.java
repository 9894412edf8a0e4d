package org.voltdocket.diagnosis.cause;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.cause.PlausibleFacts.Plausible;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** A missing fact counts by the probability of the values that change the decision. */
class DecisiveFactsTest {

    private static final Rulebook BOOK = Editions.of("2026.1");
    private static final Facts USUAL = sized(70.0);
    private static final Facts SMALL = sized(50.0);

    private static Facts sized(Double ampereHours) {
        return Facts.UNKNOWN.with(Facts.BatteryFacts.UNKNOWN.of(Chemistry.EFB, ampereHours), null);
    }

    private static CaseDecision decision(Cause first, double likelihood, BatteryReason battery, Leaning leaning) {
        return new CaseDecision(
                List.of(), List.of(new RankedCause(first, 0.9, List.of())), likelihood, battery, leaning);
    }

    /** By hand: share times likelihood, 0.1·0.2 = 0.02 of 0.92, 2 %; 0.1·1 = 0.1 of 1, 10 %. The limit is 5 %. */
    @ParameterizedTest
    @CsvSource({"0.2, NO_FAULT_SEEN", "1.0, OPEN"})
    void aFactOpensACaseOnlyIfItsChangingValuesAreProbable(double likelihood, Leaning is) {
        CaseDecision base = decision(Cause.NONE, 1, BatteryReason.TESTED_CHARGED, Leaning.NO_FAULT_SEEN);
        CaseDecision misfit = decision(Cause.MISFIT, likelihood, BatteryReason.TESTED_CHARGED, Leaning.USAGE_SIDE);
        DecisiveFacts found = DecisiveFacts.of(
                BOOK,
                base,
                Map.of("battery.capacityAh", List.of(new Plausible(SMALL, 0.1), new Plausible(USUAL, 0.9))),
                facts -> facts == SMALL ? misfit : base);
        assertThat(found.decision().leaning()).isEqualTo(is);
        assertThat(found.missing().isEmpty()).isEqualTo(is != Leaning.OPEN);
    }

    /** A battery that fails by all but a twentieth of its plausible ratings has failed. */
    @ParameterizedTest
    @CsvSource({"0.04, FAILED", "0.06, NOT_JUDGED"})
    void anUnratedBatteryIsJudgedWhereItsPlausibleRatingsAgree(double share, BatteryVerdict is) {
        CaseDecision base = decision(Cause.BATTERY_WORN, 1, BatteryReason.FACTS_MISSING, Leaning.OPEN);
        CaseDecision failed = decision(Cause.BATTERY_WORN, 1, BatteryReason.WEAR, Leaning.BATTERY_SIDE);
        CaseDecision passed = decision(Cause.NONE, 1, BatteryReason.TESTED_CHARGED, Leaning.NO_FAULT_SEEN);
        DecisiveFacts found = DecisiveFacts.of(
                BOOK,
                base,
                Map.of(PlausibleFacts.RATING, List.of(new Plausible(SMALL, share), new Plausible(USUAL, 1 - share))),
                facts -> facts == SMALL ? passed : failed);
        assertThat(found.decision().battery().verdict()).isEqualTo(is);
    }
}
