package org.voltdocket.returned;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;

/**
 * Batteries that came back, from arrival to outcome. For {@code AUDITOR} and {@code ADMIN}; every method throws {@link
 * org.springframework.security.access.AccessDeniedException} for other roles, and {@link org.voltdocket.casefile.NotFoundException}
 * where there is no such return.
 */
public interface ReturnService {

    /**
     * Books a battery in and finds its cases. The evidence of the bench will join the newest, until another is chosen. A
     * battery that is booked in and has no outcome yet is not booked in twice.
     *
     * @param pallet number of the pallet it came on; it then counts as arrived on the pallet's day
     * @throws InvalidReturnRequestException if there is no such pallet
     */
    ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> pallet);

    ReturnedBattery of(Actor actor, UUID id);

    List<ReturnListItem> list(Actor actor, ReturnQuery query);

    /** Which returns a case has, oldest first, for whoever may see the case; asked by callers that asked {@code Cases} first. */
    List<UUID> ofCase(UUID caseId);

    /**
     * The outcome of a return, for a page of its case.
     *
     * @param actor whoever may see the case
     */
    Optional<RecordedOutcome> outcomeOf(Actor actor, UUID caseId);

    /**
     * Says which case the battery belongs to.
     *
     * @throws InvalidReturnRequestException if the case is of another battery
     * @throws ReturnConflictException once bench evidence lies in a case
     */
    ReturnedBattery choose(Actor actor, UUID id, CaseNumber number);

    /** Notes how it looks; {@code seenAt} and {@code seenBy} are set here. */
    ReturnedBattery look(Actor actor, UUID id, BatteryCondition seen);

    /** @throws InvalidReturnRequestException if the name of the place has not 1 to 60 characters */
    ReturnedBattery put(Actor actor, UUID id, String place);

    /**
     * Notes a step of the bench.
     *
     * @param at when it was done; empty for now
     * @throws InvalidReturnRequestException if the time cannot be right
     * @throws ReturnConflictException if the procedure does not allow it then
     */
    ReturnedBattery step(Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note);

    /**
     * Takes a file of the bench into the case, by the same way as every other file.
     *
     * @throws ReturnConflictException if the battery has no case
     */
    IntakeResult receive(Actor actor, UUID id, BenchFile file);

    /**
     * Concludes. Given again, the later one counts and the earlier one stays.
     *
     * @throws InvalidReturnRequestException if the reason has not 1 to 2000 characters
     */
    ReturnedBattery conclude(Actor actor, UUID id, BenchOutcome finding, String reason);
}
