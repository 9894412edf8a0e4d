package org.voltdocket.returned;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.casefile.Cases;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.Intake;
import org.voltdocket.evidence.Kept;
import org.voltdocket.evidence.Known;
import org.voltdocket.evidence.Received;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.bench.Act;
import org.voltdocket.returned.bench.Step;

/** The room's door: asks who comes, and hands on. No transaction of its own, for the intake of a file has its own. */
@Service
class ReturnDoor implements Returns {

    private final ReturnBook book;
    private final ReturnReader reader;
    private final ReturnStore store;
    private final NoteStore notes;
    private final ReturnList lines;
    private final Intake intake;
    private final Cases cases;
    private final Clock clock;

    ReturnDoor(
            ReturnBook book,
            ReturnReader reader,
            ReturnStore store,
            NoteStore notes,
            ReturnList lines,
            Intake intake,
            Cases cases,
            Clock clock) {
        this.book = book;
        this.reader = reader;
        this.store = store;
        this.notes = notes;
        this.lines = lines;
        this.intake = intake;
        this.cases = cases;
        this.clock = clock;
    }

    @Override
    public Arrived arrive(Actor actor, BatterySerial serial, Optional<String> pallet) {
        BenchPeople.require(actor);
        return book.arrive(actor, serial, pallet);
    }

    @Override
    public Returned of(Actor actor, UUID id) {
        BenchPeople.require(actor);
        return reader.read(actor, id);
    }

    @Override
    public List<ReturnLine> list(Actor actor, ReturnQuery query) {
        BenchPeople.require(actor);
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
    public Returned choose(Actor actor, UUID id, CaseNumber number) {
        BenchPeople.require(actor);
        return book.choose(actor, id, number);
    }

    @Override
    public Returned look(Actor actor, UUID id, Condition seen) {
        BenchPeople.require(actor);
        return book.look(actor, id, seen);
    }

    @Override
    public Returned put(Actor actor, UUID id, String place) {
        BenchPeople.require(actor);
        return book.put(actor, id, place);
    }

    @Override
    public Returned step(Actor actor, UUID id, Step step, Act act, Optional<Instant> at, String note) {
        BenchPeople.require(actor);
        return book.step(actor, id, step, act, at, note);
    }

    @Override
    public Received receive(Actor actor, UUID id, BenchFile file) {
        BenchPeople.require(actor);
        CaseRef ref = book.settle(actor, id);
        Received received =
                intake.accept(actor, ref, new Upload(file.fileName(), file.content(), file.note(), Origin.BENCH));
        if (received instanceof Kept kept) {
            book.keep(id, kept.item().id());
        } else if (received instanceof Known known && known.item().origin() == Origin.BENCH) {
            // the same bytes again, or a connection that broke after they were kept
            book.keep(id, known.item().id());
        }
        return received;
    }

    @Override
    public Returned conclude(Actor actor, UUID id, Finding finding, String reason) {
        BenchPeople.require(actor);
        return book.conclude(actor, id, finding, reason);
    }
}
