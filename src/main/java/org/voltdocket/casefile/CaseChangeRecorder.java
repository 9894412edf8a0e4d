package org.voltdocket.casefile;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.read.Fact;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/**
 * Records a change of a case in the caller's transaction: marks the case as pending assessment, publishes the event and writes
 * the trail entry, which holds the lock of the trail and therefore comes last.
 */
@Component
class CaseChangeRecorder {

    private final PendingAssessments pending;
    private final ApplicationEventPublisher events;
    private final Trail trail;
    private final Clock clock;

    CaseChangeRecorder(PendingAssessments pending, ApplicationEventPublisher events, Trail trail, Clock clock) {
        this.pending = pending;
        this.events = events;
        this.trail = trail;
        this.clock = clock;
    }

    Instant now() {
        return clock.instant();
    }

    LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), clock.getZone());
    }

    /** @param related cases of the same battery or vehicle, in the order of their ids */
    void opened(Actor actor, CaseEntity row, Facts facts, List<UUID> related) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("batterySerial", row.ref().serial().value());
        details.put("vin", row.ref().vin().value());
        Fact.known(facts).forEach((fact, value) -> details.put(fact.path(), Fact.plain(value)));
        pending.mark(row.id());
        related.forEach(pending::mark);
        events.publishEvent(new CaseOpenedEvent(row.id()));
        trail.record(actor, "case-opened", row.ref().number().value(), details);
    }

    void factsChanged(Actor actor, CaseEntity row, String act, Map<String, Object> changes) {
        pending.mark(row.id());
        events.publishEvent(new FactsChangedEvent(row.id()));
        trail.record(actor, act, row.ref().number().value(), changes);
    }

    void workshopAdded(Actor actor, CaseReference ref, UUID workshop) {
        trail.record(actor, "workshop-added", ref.number().value(), Map.of("workshop", workshop.toString()));
    }
}
