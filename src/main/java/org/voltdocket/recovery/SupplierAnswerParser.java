package org.voltdocket.recovery;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.recovery.SupplierRecovery.Answer;
import org.voltdocket.recovery.SupplierRecovery.Line;

/** Parses and validates the answer of a supplier. */
@Component
class SupplierAnswerParser {

    private final Clock clock;

    SupplierAnswerParser(Clock clock) {
        this.clock = clock;
    }

    /** @throws RequestException if a member is missing or invalid */
    Answer read(Actor actor, Line line, SupplierAnswer given, Instant at) {
        Optional<String> reason = FreeText.optional("recovery-refused", "reason", given.reason());
        boolean credited = "credited".equals(given.outcome());
        if (!credited && !"refused".equals(given.outcome())) {
            throw RequestException.invalid(
                    "recovery-refused", "outcome", "'outcome' is credited or refused; read '" + given.outcome() + "'.");
        }
        if (reason.isEmpty() && (!credited || !line.answers().isEmpty())) {
            throw RequestException.invalid(
                    "recovery-refused", "reason", "'reason' is missing: a refusal or a correction needs a reason.");
        }
        return new Answer(
                credited ? Optional.of(amount(line, given.amount())) : Optional.empty(),
                day(line, given.on()),
                reason,
                at,
                actor.user());
    }

    private static Money amount(Line line, String given) {
        if (given == null || given.isBlank()) {
            return line.amount();
        }
        Money amount = Money.read(given.replace(',', '.'), line.amount().currency());
        if (amount.amount().compareTo(line.amount().amount()) > 0) {
            throw RequestException.invalid(
                    "recovery-refused",
                    "amount",
                    "'amount' is at most what was asked for, " + line.amount() + "; read " + amount + ".");
        }
        return amount;
    }

    private LocalDate day(Line line, String given) {
        try {
            LocalDate day = LocalDate.parse(given == null ? "" : given.strip());
            if (!day.isAfter(LocalDate.ofInstant(clock.instant(), clock.getZone()))
                    && !day.isBefore(line.decidedOn())) {
                return day;
            }
        } catch (DateTimeException e) {
            // refused below
        }
        throw RequestException.invalid(
                "recovery-refused",
                "on",
                "'on' is the day of the answer, such as 2026-03-04, from the approval on " + line.decidedOn()
                        + " until today; read '" + given + "'.");
    }
}
