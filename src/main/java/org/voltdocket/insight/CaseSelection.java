package org.voltdocket.insight;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The cases behind a number.
 *
 * @param all how many there are
 * @param listed the newest of them
 */
public record CaseSelection(long all, List<Line> listed) {

    /** A case. */
    public record Line(
            String number,
            String serial,
            String vin,
            Optional<String> workshop,
            Optional<String> cause,
            Optional<String> outcome,
            Optional<String> state,
            Optional<BigDecimal> claimed,
            Optional<String> currency,
            Optional<Instant> claimedAt,
            Optional<LocalDate> soldOn) {}
}
