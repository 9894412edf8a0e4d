package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Currency;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

class ClaimDecisionTest {

    private static final Currency EUR = Currency.getInstance("EUR");

    private static ClaimDecision decision(String paid, String limit, Optional<Confirmation> confirmation) {
        return new ClaimDecision(
                ClaimState.APPROVED,
                new Money(new BigDecimal(paid), EUR),
                "why",
                Instant.parse("2026-03-05T08:00:00Z"),
                "clerk",
                UUID.randomUUID(),
                Sha256.of(new byte[0]),
                "2026.1",
                Leaning.BATTERY_SIDE,
                false,
                Optional.ofNullable(limit).map(text -> new Money(new BigDecimal(text), EUR)),
                confirmation,
                Map.of());
    }

    @ParameterizedTest
    @CsvSource({"100.00, 100.00, false", "100.01, 100.00, true", "0.01, 0.00, true", "1000000.00, , false"})
    void aboveTheLimitASecondPersonConfirms(String paid, String limit, boolean expected) {
        assertThat(decision(paid, limit, Optional.empty()).needsSecondPerson()).isEqualTo(expected);
    }

    @Test
    void aConfirmedDecisionNeedsNobodyElse() {
        Confirmation second = new Confirmation(Instant.parse("2026-03-05T07:00:00Z"), "second");
        assertThat(decision("500.00", "100.00", Optional.of(second)).needsSecondPerson())
                .isFalse();
    }
}
