package org.voltdocket.returned;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;
import org.voltdocket.returned.bench.StepRecord;
import org.voltdocket.trail.Trail;

/** The returned batteries in PostgreSQL. Locks in this order: serial, return, trail. */
@Service
@Transactional
class ReturnTransactions {

    private static final int MOST_TEXT = 2000;
    private static final int MOST_PLACE = 60;

    private final ReturnRepository store;
    private final ReturnHistoryRepository notes;
    private final PalletRepository pallets;
    private final ReturnReader reader;
    private final AssessmentService assessments;
    private final CaseService cases;
    private final Trail trail;
    private final ApplicationEventPublisher news;
    private final Clock clock;

    ReturnTransactions(
            ReturnRepository store,
            ReturnHistoryRepository notes,
            PalletRepository pallets,
            ReturnReader reader,
            AssessmentService assessments,
            CaseService cases,
            Trail trail,
            ApplicationEventPublisher news,
            Clock clock) {
        this.store = store;
        this.notes = notes;
        this.pallets = pallets;
        this.reader = reader;
        this.assessments = assessments;
        this.cases = cases;
        this.trail = trail;
        this.news = news;
        this.clock = clock;
    }

    ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> palletNumber) {
        Optional<PalletRepository.Row> pallet = palletNumber.map(number -> pallets.find(number)
                .orElseThrow(() -> new InvalidReturnRequestException(
                        "pallet", "'pallet' is the number of a pallet that is noted; read '" + number + "'")));
        store.lock(serial);
        Optional<ReturnRepository.Row> open = store.open(serial);
        if (open.isPresent()) {
            return new ArrivalResult(false, reader.read(actor, open.get().id()));
        }
        List<CaseListItem> found = reader.cases(actor, serial);
        List<ArrivalWarning> told =
                reader.told(actor, serial, found, pallet.map(PalletRepository.Row::id), Optional.empty());
        UUID id = store.add(
                serial,
                pallet.map(PalletRepository.Row::id).orElse(null),
                pallet.map(row -> arrival(row.arrivedOn())).orElse(now()),
                actor.user(),
                told,
                reader.product(serial));
        if (!found.isEmpty()) {
            keepCase(actor, id, found.get(0).ref());
        }
        ReturnedBattery battery = reader.read(actor, id);
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("batterySerial", serial.value());
        battery.pallet().ifPresent(number -> details.put("return.pallet", number));
        details.put("return.told", told.stream().map(ArrivalWarning::id).toList());
        record(actor, "return-arrived", battery, details);
        return new ArrivalResult(true, battery);
    }

    /** A pallet's day counts, but nothing arrives later than now. */
    private Instant arrival(LocalDate day) {
        Instant noon = day.atTime(12, 0).toInstant(ZoneOffset.UTC);
        return noon.isAfter(now()) ? now() : noon;
    }

    private void keepCase(Actor actor, UUID id, CaseReference ref) {
        UUID before = assessments.latest(ref.id()).map(StoredAssessment::id).orElse(null);
        store.choose(id, ref.id(), before, now(), actor.user());
    }

    ReturnedBattery choose(Actor actor, UUID id, CaseNumber number) {
        ReturnedBattery battery = locked(actor, id);
        CaseReference ref = cases.require(actor, number);
        if (!ref.serial().equals(battery.serial())) {
            throw new InvalidReturnRequestException(
                    "case", "case " + number + " is of battery " + ref.serial() + ", not of " + battery.serial());
        }
        if (battery.file().filter(ref::equals).isPresent()) {
            return battery;
        }
        if (!battery.evidence().isEmpty()) {
            throw ReturnConflictException.caseIsFixed(battery);
        }
        keepCase(actor, id, ref);
        ReturnedBattery after = reader.read(actor, id);
        record(actor, "return-case-chosen", after, Map.of("return.case", number.value()));
        return after;
    }

    ReturnedBattery look(Actor actor, UUID id, BatteryCondition given) {
        ReturnedBattery battery = locked(actor, id);
        String note = text("note", given.note(), true);
        BatteryCondition seen = new BatteryCondition(
                given.cracked(),
                given.leaking(),
                given.swollen(),
                given.frozen(),
                given.terminals(),
                note,
                now(),
                actor.user());
        notes.look(id, seen);
        notes.step(id, new StepRecord(BenchStep.LOOK, StepAction.FINISH, now(), actor.user(), now(), null));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.cracked", seen.cracked());
        details.put("return.leaking", seen.leaking());
        details.put("return.swollen", seen.swollen());
        details.put("return.frozen", seen.frozen());
        details.put("return.terminals", seen.terminals().id());
        record(actor, "return-looked-at", battery, details);
        return reader.read(actor, id);
    }

    ReturnedBattery put(Actor actor, UUID id, String name) {
        ReturnedBattery battery = locked(actor, id);
        String place = name == null ? "" : name.strip();
        if (place.isEmpty() || place.length() > MOST_PLACE || place.indexOf(0) >= 0) {
            throw new InvalidReturnRequestException(
                    "place", "'place' names the place in the store in 1 to 60 characters");
        }
        notes.put(id, new ReturnedBattery.Place(place, now(), actor.user()));
        record(actor, "return-put", battery, Map.of("return.place", place));
        return reader.read(actor, id);
    }

    ReturnedBattery step(Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note) {
        ReturnedBattery battery = locked(actor, id);
        Instant now = now();
        Instant when = at.map(time -> time.truncatedTo(ChronoUnit.MICROS)).orElse(now);
        String said = text("note", note, true);
        BenchStepRules.check(battery, step, act, when, now);
        notes.step(id, new StepRecord(step, act, when, actor.user(), now, said));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.step", step.id());
        details.put("return.act", act.id());
        details.put("return.at", when.toString());
        record(actor, "bench-step", battery, details);
        return reader.read(actor, id);
    }

    /** The case that a file of the bench goes to; settles it. */
    CaseReference settle(Actor actor, UUID id) {
        ReturnedBattery battery = locked(actor, id);
        CaseReference ref = battery.file().orElseThrow(() -> ReturnConflictException.noCase(battery));
        if (store.chosen(id).isEmpty()) {
            keepCase(actor, id, ref);
        }
        return ref;
    }

    void keep(UUID id, UUID evidence) {
        store.addEvidence(id, evidence);
    }

    ReturnedBattery conclude(Actor actor, UUID id, BenchOutcome finding, String reason) {
        ReturnedBattery battery = locked(actor, id);
        String why = text("reason", reason, false);
        Optional<UUID> caseId = battery.file().map(CaseReference::id);
        Optional<UUID> assessment = caseId.flatMap(assessments::latest).map(StoredAssessment::id);
        if (caseId.isPresent() && store.chosen(id).isEmpty()) {
            keepCase(actor, id, battery.file().get());
        }
        notes.conclude(id, new RecordedOutcome(finding, why, assessment, now(), actor.user()));
        news.publishEvent(new OutcomeRecordedEvent(id, caseId, finding));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.outcome", finding.id());
        details.put("return.reason", why);
        record(actor, "return-concluded", battery, details);
        return reader.read(actor, id);
    }

    private ReturnedBattery locked(Actor actor, UUID id) {
        store.lock(id);
        return reader.read(actor, id);
    }

    /** In the trail of the case, where there is one, so that the case tells it; else under the return's own number. */
    private void record(Actor actor, String act, ReturnedBattery battery, Map<String, Object> details) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("return.number", battery.number());
        all.putAll(details);
        trail.record(actor, act, battery.file().map(ref -> ref.number().value()).orElse(battery.number()), all);
    }

    private static String text(String field, String given, boolean mayLack) {
        String text = given == null ? "" : given.strip();
        if (text.isEmpty() && mayLack) {
            return null;
        }
        if (text.isEmpty() || text.length() > MOST_TEXT || text.indexOf(0) >= 0) {
            List<org.voltdocket.kernel.FieldError> errors = new ArrayList<>();
            errors.add(new org.voltdocket.kernel.FieldError(
                    field, "'" + field + "' is a text of 1 to " + MOST_TEXT + " characters; read " + text.length()));
            throw new InvalidReturnRequestException(errors);
        }
        return text;
    }

    /** PostgreSQL keeps microseconds; what is told first must be what is read later. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
