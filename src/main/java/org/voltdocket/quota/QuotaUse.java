package org.voltdocket.quota;

import java.time.Instant;
import java.util.Optional;

/**
 * How much of a quota a workshop has used.
 *
 * @param used from 0; may exceed the limit where the limit was lowered
 * @param limit above 0
 * @param resetsAt when the count starts again at 0; empty for tokens, which count until they end
 */
public record QuotaUse(Quota quota, long used, long limit, Optional<Instant> resetsAt) {

    private static final int NEAR_PERCENT = 80;

    /** Used share of the limit, 0 to 100. */
    public int percent() {
        return (int) Math.min(100, 100.0 * used / limit);
    }

    /** Whether at least 80 % is used. */
    public boolean isNear() {
        return percent() >= NEAR_PERCENT;
    }
}
