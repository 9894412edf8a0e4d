package org.voltdocket.returned.service;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ArrivalResult;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchAccess;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnListRepository;
import org.voltdocket.returned.ReturnQuery;
import org.voltdocket.returned.ReturnRepository;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;

/**
 * Returned batteries from arrival to outcome. Unless stated otherwise a method throws {@link
 * org.springframework.security.access.AccessDeniedException} for an actor who may not audit, and {@link RequestException} (404) where the return does not exist.
 */
@Service
public class ReturnService {

    private final ReturnArrivalService arrivals;
    private final BenchRecordService bench;
    private final ReturnReader reader;
    private final ReturnRepository returns;
    private final ReturnListRepository list;
    private final EvidenceUploadService uploads;

    ReturnService(
            ReturnArrivalService arrivals,
            BenchRecordService bench,
            ReturnReader reader,
            ReturnRepository returns,
            ReturnListRepository list,
            EvidenceUploadService uploads) {
        this.arrivals = arrivals;
        this.bench = bench;
        this.reader = reader;
        this.returns = returns;
        this.list = list;
        this.uploads = uploads;
    }

    /**
     * Registers a battery and finds its cases. Bench evidence will go to the newest case unless another is assigned. A
     * battery that is registered and has no outcome yet is not registered twice.
     *
     * @param pallet number of the pallet it arrived on; the day of the pallet is then the day of arrival
     * @throws RequestException (400) if the pallet does not exist
     */
    public ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> pallet) {
        BenchAccess.require(actor);
        return arrivals.arrive(actor, serial, pallet);
    }

    public ReturnedBattery of(Actor actor, UUID id) {
        BenchAccess.require(actor);
        return reader.read(actor, id);
    }

    public List<ReturnListItem> list(Actor actor, ReturnQuery query) {
        BenchAccess.require(actor);
        return list.find(query);
    }

    /** The returns of a case, oldest first. The caller has checked that the actor may see the case. */
    public List<UUID> ofCase(UUID caseId) {
        return returns.ofCase(caseId);
    }

    /**
     * The latest outcome of a case's battery.
     *
     * @param actor anyone who may see the case
     */
    public Optional<RecordedOutcome> outcomeOf(Actor actor, UUID caseId) {
        return reader.outcomeOf(actor, caseId);
    }

    /**
     * Assigns the return to a case of its battery.
     *
     * @throws RequestException (400) if the case is of another battery; (409) if a case already holds bench evidence
     */
    public ReturnedBattery assignCase(Actor actor, UUID id, CaseNumber number) {
        BenchAccess.require(actor);
        return arrivals.assignCase(actor, id, number);
    }

    /** Records a visual inspection; {@code seenAt} and {@code seenBy} are set by this method. */
    public ReturnedBattery recordCondition(Actor actor, UUID id, BatteryCondition seen) {
        BenchAccess.require(actor);
        return bench.recordCondition(actor, id, seen);
    }

    /** @throws RequestException (400) unless the place is named in 1 to 60 characters */
    public ReturnedBattery recordPlace(Actor actor, UUID id, String place) {
        BenchAccess.require(actor);
        return bench.recordPlace(actor, id, place);
    }

    /**
     * Records a step of the bench procedure.
     *
     * @param at when it was done; empty for now
     * @throws RequestException (400) if the time is in the future or before the previous step; (409) if the procedure does
     *     not allow the step then
     */
    public ReturnedBattery recordStep(
            Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note) {
        BenchAccess.require(actor);
        return bench.recordStep(actor, id, step, act, at, note);
    }

    /**
     * Adds a file to the case through the intake of all evidence, with the origin {@code bench}.
     *
     * @throws RequestException (409) if the battery has no case
     */
    public IntakeResult receive(Actor actor, UUID id, Upload file) {
        BenchAccess.require(actor);
        CaseReference ref = arrivals.fixCase(actor, id);
        IntakeResult received =
                uploads.receive(actor, ref, new Upload(file.fileName(), file.content(), file.note(), Origin.BENCH));
        if (received instanceof Stored stored) {
            arrivals.addEvidence(id, stored.item().id());
        } else if (received instanceof AlreadyStored known && known.item().origin() == Origin.BENCH) {
            // sent twice, or the connection broke after the file was stored
            arrivals.addEvidence(id, known.item().id());
        }
        return received;
    }

    /**
     * Records the outcome. A later outcome replaces an earlier one, which stays stored.
     *
     * @throws RequestException (400) unless the reason has 1 to 2000 characters
     */
    public ReturnedBattery recordOutcome(Actor actor, UUID id, BenchOutcome outcome, String reason) {
        BenchAccess.require(actor);
        return bench.recordOutcome(actor, id, outcome, reason);
    }
}
