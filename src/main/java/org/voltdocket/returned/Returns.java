package org.voltdocket.returned;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.evidence.Received;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.bench.Act;
import org.voltdocket.returned.bench.Step;

/**
 * Batteries that came back, from arrival to outcome. For {@code AUDITOR} and {@code ADMIN}; every method throws {@link
 * org.springframework.security.access.AccessDeniedException} for other roles, and {@link org.voltdocket.casefile.NotVisible}
 * where there is no such return.
 */
public interface Returns {

    /**
     * Books a battery in and finds its cases. The evidence of the bench will join the newest, until another is chosen. A
     * battery that is booked in and has no outcome yet is not booked in twice.
     *
     * @param pallet number of the pallet it came on; it then counts as arrived on the pallet's day
     * @throws ReturnRefused if there is no such pallet
     */
    Arrived arrive(Actor actor, BatterySerial serial, Optional<String> pallet);

    Returned of(Actor actor, UUID id);

    List<ReturnLine> list(Actor actor, ReturnQuery query);

    /** Which returns a case has, oldest first, for whoever may see the case; asked by callers that asked {@code Cases} first. */
    List<UUID> ofCase(UUID caseId);

    /**
     * The outcome of a return, for a page of its case.
     *
     * @param actor whoever may see the case
     */
    Optional<Outcome> outcomeOf(Actor actor, UUID caseId);

    /**
     * Says which case the battery belongs to.
     *
     * @throws ReturnRefused if the case is of another battery
     * @throws ReturnConflict once bench evidence lies in a case
     */
    Returned choose(Actor actor, UUID id, CaseNumber number);

    /** Notes how it looks; {@code seenAt} and {@code seenBy} are set here. */
    Returned look(Actor actor, UUID id, Condition seen);

    /** @throws ReturnRefused if the name of the place has not 1 to 60 characters */
    Returned put(Actor actor, UUID id, String place);

    /**
     * Notes a step of the bench.
     *
     * @param at when it was done; empty for now
     * @throws ReturnRefused if the time cannot be right
     * @throws ReturnConflict if the procedure does not allow it then
     */
    Returned step(Actor actor, UUID id, Step step, Act act, Optional<Instant> at, String note);

    /**
     * Takes a file of the bench into the case, by the same way as every other file.
     *
     * @throws ReturnConflict if the battery has no case
     */
    Received receive(Actor actor, UUID id, BenchFile file);

    /**
     * Concludes. Given again, the later one counts and the earlier one stays.
     *
     * @throws ReturnRefused if the reason has not 1 to 2000 characters
     */
    Returned conclude(Actor actor, UUID id, Finding finding, String reason);
}
