package org.voltdocket.catalogue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.voltdocket.kernel.BatterySerial;

/**
 * Serials that a batch was numbered with.
 *
 * @param type code of the battery type
 * @param first first serial of the range, which begins like {@code last} and ends in as many digits
 * @param count batteries made, at most what the range can number
 * @param recordedAt since when the row stands
 * @param endedAt when a correction took its place; empty while it stands
 */
public record ProducedRange(
        String type,
        String batch,
        BatterySerial first,
        BatterySerial last,
        LocalDate producedOn,
        int count,
        Instant recordedAt,
        Optional<Instant> endedAt) {}
