package org.voltdocket.returned.service;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.BenchStepRules;
import org.voltdocket.returned.OutcomeRecordedEvent;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.BenchStep;
import org.voltdocket.returned.bench.StepAction;
import org.voltdocket.returned.bench.StepRecord;

/** Records what happens to a returned battery on the bench, up to its outcome. Locks in this order: return, trail. */
@Service
@Transactional
class BenchRecordService {

    private static final String INVALID = "return-refused";
    private static final int MAX_PLACE = 60;

    private final ReturnHistoryRepository history;
    private final ReturnReader reader;
    private final ReturnArrivalService arrivals;
    private final AssessmentService assessments;
    private final ReturnTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    BenchRecordService(
            ReturnHistoryRepository history,
            ReturnReader reader,
            ReturnArrivalService arrivals,
            AssessmentService assessments,
            ReturnTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.history = history;
        this.reader = reader;
        this.arrivals = arrivals;
        this.assessments = assessments;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    ReturnedBattery recordCondition(Actor actor, UUID id, BatteryCondition given) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        BatteryCondition seen = new BatteryCondition(
                given.cracked(),
                given.leaking(),
                given.swollen(),
                given.frozen(),
                given.terminals(),
                note(given.note()),
                now(),
                actor.user());
        history.addCondition(id, seen);
        history.addStep(id, new StepRecord(BenchStep.LOOK, StepAction.FINISH, now(), actor.user(), now(), null));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.cracked", seen.cracked());
        details.put("return.leaking", seen.leaking());
        details.put("return.swollen", seen.swollen());
        details.put("return.frozen", seen.frozen());
        details.put("return.terminals", seen.terminals().id());
        trail.record(actor, "return-looked-at", battery, details);
        return reader.read(actor, id);
    }

    ReturnedBattery recordPlace(Actor actor, UUID id, String name) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        String place = name == null ? "" : name.strip();
        if (place.isEmpty() || place.length() > MAX_PLACE || place.indexOf(0) >= 0) {
            throw ReturnErrors.invalid("place", "'place' names the storage place in 1 to 60 characters");
        }
        history.addPlace(id, new ReturnedBattery.Place(place, now(), actor.user()));
        trail.record(actor, "return-put", battery, Map.of("return.place", place));
        return reader.read(actor, id);
    }

    ReturnedBattery recordStep(
            Actor actor, UUID id, BenchStep step, StepAction act, Optional<Instant> at, String note) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        Instant now = now();
        Instant when = at.map(time -> time.truncatedTo(ChronoUnit.MICROS)).orElse(now);
        String remark = note(note);
        BenchStepRules.check(battery, step, act, when, now);
        history.addStep(id, new StepRecord(step, act, when, actor.user(), now, remark));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.step", step.id());
        details.put("return.act", act.id());
        details.put("return.at", when.toString());
        trail.record(actor, "bench-step", battery, details);
        return reader.read(actor, id);
    }

    ReturnedBattery recordOutcome(Actor actor, UUID id, BenchOutcome outcome, String reason) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        String why = FreeText.required(INVALID, "reason", reason, "says what the outcome rests on");
        Optional<UUID> caseId = battery.file().map(CaseReference::id);
        Optional<UUID> assessment = caseId.flatMap(assessments::latest).map(StoredAssessment::id);
        arrivals.fixCase(actor, battery);
        history.addOutcome(id, new RecordedOutcome(outcome, why, assessment, now(), actor.user()));
        events.publishEvent(new OutcomeRecordedEvent(id, caseId, outcome));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("return.outcome", outcome.id());
        details.put("return.reason", why);
        trail.record(actor, "return-concluded", battery, details);
        return reader.read(actor, id);
    }

    private static String note(String text) {
        return FreeText.optional(INVALID, "note", text).orElse(null);
    }

    private Instant now() {
        return clock.instant();
    }
}
