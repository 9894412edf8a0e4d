package org.voltdocket.claim;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseRef;
import org.voltdocket.casefile.Cases;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.trail.Trail;

/** The claims in PostgreSQL. Locks in this order: claim, case, trail. */
@Service
@Transactional
class ClaimBook implements Claims {

    private static final List<String> ASKABLE = Stream.concat(
                    Arrays.stream(EvidenceKind.values()).map(EvidenceKind::id),
                    FactFields.ALL.stream().map(FactFields.Field::name))
            .toList();

    private final ClaimStore store;
    private final DecisionStore decisions;
    private final Decider decider;
    private final Meanwhile meanwhile;
    private final Cases cases;
    private final Trail trail;
    private final Clock clock;

    ClaimBook(
            ClaimStore store,
            DecisionStore decisions,
            Decider decider,
            Meanwhile meanwhile,
            Cases cases,
            Trail trail,
            Clock clock) {
        this.store = store;
        this.decisions = decisions;
        this.decider = decider;
        this.meanwhile = meanwhile;
        this.cases = cases;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Claim> of(Actor actor, UUID caseId) {
        return store.latest(caseId)
                .filter(row -> actor.sees(Optional.of(row.workshop())))
                .map(row -> whole(actor, row));
    }

    @Override
    public List<String> askable() {
        return ASKABLE;
    }

    @Override
    public Claim open(Actor actor, CaseNumber number, String amount, String currency) {
        CaseRef ref = cases.require(actor, number);
        if (actor.role() != Role.WORKSHOP) {
            throw new AccessDeniedException("a workshop claims for itself");
        }
        Money asked = Money.read(amount, currency);
        if (!store.open(ref.id(), actor.workshop().orElseThrow(), asked, now(), actor.user())) {
            throw ClaimConflict.openAlready();
        }
        cases.noteClaim(ref.id(), ClaimState.DRAFT.id());
        trail.record(actor, "claim-opened", number.value(), Map.of("claim.amount", asked.toString()));
        return of(actor, ref.id()).orElseThrow();
    }

    @Override
    public Claim act(Actor actor, CaseNumber number, ClaimAct act) {
        CaseRef ref = cases.require(actor, number);
        ClaimStore.Row row = store.lockLatest(ref.id())
                .filter(found -> actor.sees(Optional.of(found.workshop())))
                .orElseThrow(() -> new NotVisible("claim of case " + number));
        if (!act.action().isFor(actor.role())) {
            throw new AccessDeniedException("the step is another role's");
        }
        if (act.ifVersion().isPresent() && act.ifVersion().getAsLong() != row.version()) {
            Claim claim = whole(actor, row);
            throw ClaimConflict.changedMeanwhile(claim, meanwhile.since(number, claim, act.ifVersion()));
        }
        ClaimState to = ClaimSteps.after(row.state(), act.action()).orElseThrow(() -> {
            Claim claim = whole(actor, row);
            return ClaimConflict.step(claim, act.action(), meanwhile.since(number, claim, act.ifVersion()));
        });
        act.check(new LinkedHashSet<>(ASKABLE));
        Instant at = now();
        Optional<ClaimDecision> decision = act.action().decides()
                ? Optional.of(decider.decide(actor, ref, row.asked(), act, to, at))
                : Optional.empty();
        store.step(row, actor, act, to, at);
        decision.ifPresent(made -> decisions.keep(row.id(), row.version() + 1, made));
        cases.noteClaim(ref.id(), to.id());
        trail.record(actor, "claim-" + act.action().id(), number.value(), details(row, to, act, decision));
        return of(actor, ref.id()).orElseThrow();
    }

    private static Map<String, Object> details(
            ClaimStore.Row row, ClaimState to, ClaimAct act, Optional<ClaimDecision> decision) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("claim.state", Map.of("old", row.state().id(), "new", to.id()));
        if (act.reason() != null) {
            details.put("claim.reason", act.reason());
        }
        if (!act.items().isEmpty()) {
            details.put("claim.items", act.items());
        }
        decision.ifPresent(made -> {
            details.put("claim.paid", made.paid().toString());
            details.put("claim.assessment", made.assessmentSha256().hex());
            details.put("claim.edition", made.edition());
            details.put("claim.leaning", made.leaning().id());
        });
        return details;
    }

    private Claim whole(Actor actor, ClaimStore.Row row) {
        return new Claim(
                row.id(),
                row.workshop(),
                row.asked(),
                row.state(),
                row.version(),
                row.openedAt(),
                row.openedBy(),
                ClaimSteps.from(row.state()).stream()
                        .filter(action -> action.isFor(actor.role()))
                        .toList(),
                store.steps(row.id()),
                decisions.of(row.id()));
    }

    /** PostgreSQL keeps microseconds; what is told first must be what is read later. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
