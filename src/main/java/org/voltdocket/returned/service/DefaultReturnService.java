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

/** Checks access and delegates. It opens no transaction, because the intake of a file has its own. */
@Service
class DefaultReturnService implements ReturnService {

    private final ReturnArrivalService arrivals;
    private final BenchRecordService bench;
    private final ReturnReader reader;
    private final ReturnRepository returns;
    private final ReturnListRepository list;
    private final EvidenceUploadService uploads;

    DefaultReturnService(
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

    @Override
    public ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> pallet) {
        BenchAccess.require(actor);
        return arrivals.arrive(actor, serial, pallet);
    }

    @Override
    public ReturnedBattery of(Actor actor, UUID id) {
        BenchAccess.require(actor);
        return reader.read(actor, id);
    }

    @Override
    public List<ReturnListItem> list(Actor actor, ReturnQuery query) {
        BenchAccess.require(actor);
        return list.find(query);
    }

    @Override
    public List<UUID> ofCase(UUID caseId) {
        return returns.ofCase(caseId);
    }

    @Override
    public Optional<RecordedOutcome> outcomeOf(Actor actor, UUID caseId) {
        return reader.outcomeOf(actor, caseId);
    }

    @Override
    public ReturnedBattery assignCase(Actor actor, UUID id, CaseNumber number) {
        BenchAccess.require(actor);
        return arrivals.assignCase(actor, id, number);
    }

    @Override
    public ReturnedBattery recordCondition(Actor actor, UUID id, BatteryCondition seen) {
        BenchAccess.require(actor);
        return bench.recordCondition(actor, id, seen);
    }

    @Override
    public ReturnedBattery recordPlace(Actor actor, UUID id, String place) {
        BenchAccess.require(actor);
        return bench.recordPlace(actor, id, place);
    }

    @Override
    public ReturnedBattery recordStep(
            Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note) {
        BenchAccess.require(actor);
        return bench.recordStep(actor, id, step, act, at, note);
    }

    @Override
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

    @Override
    public ReturnedBattery recordOutcome(Actor actor, UUID id, BenchOutcome outcome, String reason) {
        BenchAccess.require(actor);
        return bench.recordOutcome(actor, id, outcome, reason);
    }
}
