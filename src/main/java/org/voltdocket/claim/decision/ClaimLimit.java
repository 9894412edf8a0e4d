package org.voltdocket.claim.decision;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Currency;
import java.util.Optional;
import org.voltdocket.kernel.Money;

/**
 * What one person may grant in a currency; above it a second person confirms.
 *
 * @param amount empty if the limit was lifted
 * @param reason why it was set so
 */
public record ClaimLimit(Currency currency, Optional<BigDecimal> amount, String reason, Instant at, String by) {

    /** The amount with its currency; empty if the limit was lifted. */
    public Optional<Money> money() {
        return amount.map(value -> new Money(value, currency));
    }
}
