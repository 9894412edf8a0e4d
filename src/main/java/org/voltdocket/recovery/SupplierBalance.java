package org.voltdocket.recovery;

import org.voltdocket.kernel.Money;

/**
 * The amounts of one supplier in one currency.
 *
 * @param waiting approved and in no list yet
 * @param sent in a live list and not answered
 * @param credited what came back
 * @param refused what was asked for and will not come: refused claims, and what a credit falls short
 */
public record SupplierBalance(
        String supplier,
        String name,
        int waitingClaims,
        Money waiting,
        int sentClaims,
        Money sent,
        Money credited,
        Money refused) {

    /** Its currency's three letters. */
    public String currency() {
        return waiting.code();
    }
}
