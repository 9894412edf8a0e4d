package org.voltdocket.returned.service;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ArrivalResult;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnQuery;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;

/**
 * Returned batteries from arrival to outcome. Unless stated otherwise a method throws {@link
 * org.springframework.security.access.AccessDeniedException} for an actor who may not audit, and {@link
 * org.voltdocket.casefile.NotFoundException} where the return does not exist.
 */
public interface ReturnService {

    /**
     * Registers a battery and finds its cases. Bench evidence will go to the newest case unless another is assigned. A
     * battery that is registered and has no outcome yet is not registered twice.
     *
     * @param pallet number of the pallet it arrived on; the day of the pallet is then the day of arrival
     * @throws RequestException (400) if the pallet does not exist
     */
    ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> pallet);

    ReturnedBattery of(Actor actor, UUID id);

    List<ReturnListItem> list(Actor actor, ReturnQuery query);

    /** The returns of a case, oldest first. The caller has checked that the actor may see the case. */
    List<UUID> ofCase(UUID caseId);

    /**
     * The latest outcome of a case's battery.
     *
     * @param actor anyone who may see the case
     */
    Optional<RecordedOutcome> outcomeOf(Actor actor, UUID caseId);

    /**
     * Assigns the return to a case of its battery.
     *
     * @throws RequestException (400) if the case is of another battery; (409) if a case already holds bench evidence
     */
    ReturnedBattery assignCase(Actor actor, UUID id, CaseNumber number);

    /** Records a visual inspection; {@code seenAt} and {@code seenBy} are set by this method. */
    ReturnedBattery recordCondition(Actor actor, UUID id, BatteryCondition seen);

    /** @throws RequestException (400) unless the place is named in 1 to 60 characters */
    ReturnedBattery recordPlace(Actor actor, UUID id, String place);

    /**
     * Records a step of the bench procedure.
     *
     * @param at when it was done; empty for now
     * @throws RequestException (400) if the time is in the future or before the previous step; (409) if the procedure does
     *     not allow the step then
     */
    ReturnedBattery recordStep(Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note);

    /**
     * Adds a file to the case through the intake of all evidence, with the origin {@code bench}.
     *
     * @throws RequestException (409) if the battery has no case
     */
    IntakeResult receive(Actor actor, UUID id, Upload file);

    /**
     * Records the outcome. A later outcome replaces an earlier one, which stays stored.
     *
     * @throws RequestException (400) unless the reason has 1 to 2000 characters
     */
    ReturnedBattery recordOutcome(Actor actor, UUID id, BenchOutcome outcome, String reason);
}
