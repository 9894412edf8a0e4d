package org.voltdocket.recovery;

import java.util.UUID;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;

/**
 * An approved claim whose battery the bench found sound or damaged by use: the workshop was paid without a defect.
 *
 * @param amount what the workshop was paid
 * @param returned id of the returned battery
 * @param type according to the catalogue on arrival; may be null, as may {@code batch}
 */
public record WorkshopRepayment(
        String workshop,
        Money amount,
        CaseNumber number,
        UUID returned,
        String returnNumber,
        String serial,
        String type,
        String batch,
        String outcome,
        String outcomeReason) {}
