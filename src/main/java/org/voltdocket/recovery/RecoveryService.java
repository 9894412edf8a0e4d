package org.voltdocket.recovery;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/**
 * Recoveries of approved claims from suppliers. {@code CLERK} and {@code ADMIN} make lists and enter answers, {@code AUDITOR} reads;
 * {@code WORKSHOP} is refused.
 */
public interface RecoveryService {

    /** By supplier and currency, always with what is open. */
    List<SupplierBalance> money(Actor actor);

    /** Approved claims that are in no live list, oldest decision first; at most 5000. */
    List<RecoverableClaim> waiting(Actor actor);

    /** Every list without its claims, newest first; at most 200. */
    List<SupplierRecovery> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotFoundException if there is none */
    SupplierRecovery of(Actor actor, String number);

    /**
     * Makes a list, freezes its PDF and CSV, and so takes its claims out of those that wait.
     *
     * @param claims those to take; empty for all that wait for this supplier in this currency
     * @throws RequestException if nothing waits, or one of the claims does not (somebody may have been faster)
     */
    SupplierRecovery make(Actor actor, String supplier, String currency, Set<UUID> claims);

    /** The bytes as they were frozen. */
    byte[] pdf(Actor actor, String number);

    /** The bytes as they were frozen. */
    byte[] csv(Actor actor, String number);

    /**
     * Keeps what came back for one claim. Another answer to the same claim corrects the earlier one, which is kept.
     *
     * @throws RequestException if something of it cannot be right
     */
    SupplierRecovery answer(Actor actor, String number, SupplierAnswer given);

    /**
     * Takes a list back that no answer has come to; its claims wait again.
     *
     * @throws RequestException if it has answers, was withdrawn before, or the reason is missing
     */
    SupplierRecovery withdraw(Actor actor, String number, String reason);
}
