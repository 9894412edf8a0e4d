package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/** What differs between a decision's grounds and the case as it stands, where a later edition of the rule book judged it. */
class DecisionBasisChangeTest {

    private static final Sha256 DIGEST = Sha256.of(new byte[0]);
    private static final StoredAssessment FROZEN = kept("2026.1", Leaning.VEHICLE_SIDE, Cause.CURRENT_SENSOR, 0.93);

    private static StoredAssessment kept(String edition, Leaning leaning, Cause first, double probability) {
        Assessment assessment = new Assessment(
                edition,
                BatteryVerdict.SOUND,
                BatteryReason.TESTED_CHARGED,
                leaning,
                List.of(new RankedCause(first, probability, List.of())),
                List.of(),
                Map.of(),
                Map.of(),
                "said",
                List.of(),
                List.of());
        return new StoredAssessment(
                UUID.randomUUID(),
                UUID.randomUUID(),
                DIGEST,
                DIGEST,
                Instant.parse("2026-03-04T08:00:00Z"),
                "{}",
                assessment);
    }

    private static Optional<DecisionBasisChange> since(StoredAssessment latest) {
        ClaimDecision decision = new ClaimDecision(
                ClaimState.DECLINED,
                new Money(BigDecimal.ZERO, Currency.getInstance("EUR")),
                "why",
                Instant.parse("2026-03-05T08:00:00Z"),
                "clerk",
                FROZEN.id(),
                DIGEST,
                "2026.1",
                Leaning.VEHICLE_SIDE,
                false,
                Optional.empty(),
                Optional.empty(),
                Map.of());
        return DecisionBasisChange.of(decision, FROZEN, Optional.of(latest), List.of());
    }

    @Test
    void theSameAssessmentIsNoOtherGround() {
        assertThat(since(FROZEN)).isEmpty();
    }

    @Test
    void aNewEditionWithTheSameResultDiffersInItsEditionOnly() {
        DecisionBasisChange other = since(kept("2026.2", Leaning.VEHICLE_SIDE, Cause.CURRENT_SENSOR, 0.93))
                .orElseThrow();
        assertThat(other.differences())
                .containsExactly(new DecisionBasisChange.Difference("rulebook", "2026.1", "2026.2"));
        assertThat(other.judgedAt()).isNotNull();
    }

    @Test
    void judgedAnewWithTheSameResultNamesNoDifference() {
        DecisionBasisChange other = since(kept("2026.1", Leaning.VEHICLE_SIDE, Cause.CURRENT_SENSOR, 0.93))
                .orElseThrow();
        assertThat(other.differences()).isEmpty();
        assertThat(other.findings()).isEmpty();
    }

    @Test
    void whatTheNewEditionSaysOtherwiseIsNamed() {
        DecisionBasisChange other = since(kept("2026.2", Leaning.BATTERY_SIDE, Cause.BATTERY_DEFECT, 0.8))
                .orElseThrow();
        assertThat(other.differences())
                .containsExactly(
                        new DecisionBasisChange.Difference("rulebook", "2026.1", "2026.2"),
                        new DecisionBasisChange.Difference("leaning", "vehicle-side", "battery-side"),
                        new DecisionBasisChange.Difference("first-cause", "current-sensor", "battery-defect"),
                        new DecisionBasisChange.Difference("probability", "0.93", "0.8"));
    }
}
