package org.voltdocket.returned;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Stored;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;

/** The room's door: asks who comes, and hands on. No transaction of its own, for the intake of a file has its own. */
@Service
class AuthorizedReturnService implements ReturnService {

    private final DefaultReturnService book;
    private final ReturnReader reader;
    private final ReturnRepository store;
    private final ReturnNoteRepository notes;
    private final ReturnList lines;
    private final EvidenceUploadService uploads;
    private final CaseService cases;
    private final Clock clock;

    AuthorizedReturnService(
            DefaultReturnService book,
            ReturnReader reader,
            ReturnRepository store,
            ReturnNoteRepository notes,
            ReturnList lines,
            EvidenceUploadService uploads,
            CaseService cases,
            Clock clock) {
        this.book = book;
        this.reader = reader;
        this.store = store;
        this.notes = notes;
        this.lines = lines;
        this.uploads = uploads;
        this.cases = cases;
        this.clock = clock;
    }

    @Override
    public ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> pallet) {
        BenchAccess.require(actor);
        return book.arrive(actor, serial, pallet);
    }

    @Override
    public ReturnedBattery of(Actor actor, UUID id) {
        BenchAccess.require(actor);
        return reader.read(actor, id);
    }

    @Override
    public List<ReturnListItem> list(Actor actor, ReturnQuery query) {
        BenchAccess.require(actor);
        return lines.find(query, clock.instant());
    }

    @Override
    public List<UUID> ofCase(UUID caseId) {
        return store.ofCase(caseId);
    }

    @Override
    public Optional<Outcome> outcomeOf(Actor actor, UUID caseId) {
        cases.require(actor, caseId);
        return store.ofCase(caseId).stream()
                .flatMap(id -> notes.outcomes(id).stream())
                .reduce((first, last) -> last);
    }

    @Override
    public ReturnedBattery choose(Actor actor, UUID id, CaseNumber number) {
        BenchAccess.require(actor);
        return book.choose(actor, id, number);
    }

    @Override
    public ReturnedBattery look(Actor actor, UUID id, BatteryCondition seen) {
        BenchAccess.require(actor);
        return book.look(actor, id, seen);
    }

    @Override
    public ReturnedBattery put(Actor actor, UUID id, String place) {
        BenchAccess.require(actor);
        return book.put(actor, id, place);
    }

    @Override
    public ReturnedBattery step(
            Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note) {
        BenchAccess.require(actor);
        return book.step(actor, id, step, act, at, note);
    }

    @Override
    public IntakeResult receive(Actor actor, UUID id, BenchFile file) {
        BenchAccess.require(actor);
        CaseReference ref = book.settle(actor, id);
        IntakeResult received =
                uploads.receive(actor, ref, new Upload(file.fileName(), file.content(), file.note(), Origin.BENCH));
        if (received instanceof Stored kept) {
            book.keep(id, kept.item().id());
        } else if (received instanceof AlreadyStored known && known.item().origin() == Origin.BENCH) {
            // the same bytes again, or a connection that broke after they were kept
            book.keep(id, known.item().id());
        }
        return received;
    }

    @Override
    public ReturnedBattery conclude(Actor actor, UUID id, BenchOutcome finding, String reason) {
        BenchAccess.require(actor);
        return book.conclude(actor, id, finding, reason);
    }
}
