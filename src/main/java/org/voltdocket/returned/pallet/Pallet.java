package org.voltdocket.returned.pallet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.returned.ReturnListItem;

/**
 * A pallet of returned batteries.
 *
 * @param listed how many its list names
 * @param arrived how many of those are booked in
 * @param unlisted how many were booked in on it that its list does not name
 */
public record Pallet(
        UUID id,
        String number,
        String sender,
        LocalDate arrivedOn,
        Instant notedAt,
        String notedBy,
        int listed,
        int arrived,
        int unlisted) {

    /**
     * A battery on the list, or one that arrived without being listed.
     *
     * @param line place on the list; 0 for one that is not on it
     * @param battery the return it was booked in as; null where it has not been scanned
     */
    public record Line(int line, BatterySerial serial, ReturnListItem battery) {}

    /** With its lines. */
    public record Details(Pallet pallet, List<Line> lines) {}
}
