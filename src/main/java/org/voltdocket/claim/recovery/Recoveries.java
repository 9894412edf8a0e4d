package org.voltdocket.claim.recovery;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.voltdocket.kernel.Actor;

/**
 * What is asked back from suppliers. {@code CLERK} and {@code ADMIN} make lists and enter answers, {@code AUDITOR} reads;
 * {@code WORKSHOP} is refused.
 */
public interface Recoveries {

    /** By supplier and currency, always with what is open. */
    List<OpenMoney> money(Actor actor);

    /** Approved claims that are in no live list, oldest decision first; at most 5000. */
    List<Waiting> waiting(Actor actor);

    /** Every list without its claims, newest first; at most 200. */
    List<Recovery> all(Actor actor);

    /** @throws org.voltdocket.casefile.NotVisible if there is none */
    Recovery of(Actor actor, String number);

    /**
     * Makes a list, freezes its PDF and CSV, and so takes its claims out of those that wait.
     *
     * @param claims those to take; empty for all that wait for this supplier in this currency
     * @throws RecoveryRefused if nothing waits, or one of the claims does not (somebody may have been faster)
     */
    Recovery make(Actor actor, String supplier, String currency, Set<UUID> claims);

    /** The bytes as they were frozen. */
    byte[] pdf(Actor actor, String number);

    /** The bytes as they were frozen. */
    byte[] csv(Actor actor, String number);

    /**
     * Keeps what came back for one claim. Another answer to the same claim corrects the one before, which is kept.
     *
     * @throws RecoveryRefused if something of it cannot be right
     */
    Recovery answer(Actor actor, String number, AnswerGiven given);

    /**
     * Takes a list back that no answer has come to; its claims wait again.
     *
     * @throws RecoveryRefused if it has answers, was withdrawn before, or the reason is missing
     */
    Recovery withdraw(Actor actor, String number, String reason);
}
