package org.voltdocket.desk;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * A claim as the desk lists it.
 *
 * @param waitingSince when it was submitted; for a draft, when it was opened
 * @param takenBy who took it into review last; null if nobody did
 * @param answered whether the workshop answered an evidence request and nobody acted since
 * @param proposedBy who proposed the decision that waits for a second person; null where none does
 * @param objected whether the workshop objects to its decision and waits for the answer
 * @param dueOn null if nobody waits for it
 * @param leaning identifiers of the latest assessment's leaning and first cause, and its probability; null before the first
 */
public record DeskItem(
        UUID claim,
        long ordinal,
        String number,
        String batterySerial,
        String vin,
        UUID workshopId,
        String workshop,
        BigDecimal amount,
        String currency,
        String state,
        long version,
        Instant waitingSince,
        String takenBy,
        boolean answered,
        String proposedBy,
        boolean objected,
        LocalDate dueOn,
        String leaning,
        String firstCause,
        Double probability) {}
