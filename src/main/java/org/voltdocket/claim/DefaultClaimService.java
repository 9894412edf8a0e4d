package org.voltdocket.claim;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;
import org.voltdocket.warranty.UseClass;
import org.voltdocket.warranty.WarrantyCalculation;
import org.voltdocket.warranty.WarrantyService;

/** The claims in PostgreSQL. Locks in this order: claim, case, trail. */
@Service
@Transactional
class DefaultClaimService implements ClaimService {

    private final ClaimRepository store;
    private final EvidenceRequestRepository asked;
    private final DecisionProposalRepository proposals;
    private final DecisionRepository decisions;
    private final DecisionRecorder decider;
    private final ClaimDocumentRepository papers;
    private final ObjectionRepository objections;
    private final ApplicationEventPublisher events;
    private final ClaimMailer notices;
    private final ConcurrentChanges meanwhile;
    private final WarrantyService warranty;
    private final WorkingDayService days;
    private final CaseService cases;
    private final Trail trail;
    private final Clock clock;

    DefaultClaimService(
            ClaimRepository store,
            EvidenceRequestRepository asked,
            DecisionProposalRepository proposals,
            DecisionRepository decisions,
            DecisionRecorder decider,
            ClaimDocumentRepository papers,
            ObjectionRepository objections,
            ApplicationEventPublisher events,
            ClaimMailer notices,
            ConcurrentChanges meanwhile,
            WarrantyService warranty,
            WorkingDayService days,
            CaseService cases,
            Trail trail,
            Clock clock) {
        this.store = store;
        this.asked = asked;
        this.proposals = proposals;
        this.decisions = decisions;
        this.decider = decider;
        this.papers = papers;
        this.objections = objections;
        this.events = events;
        this.notices = notices;
        this.meanwhile = meanwhile;
        this.warranty = warranty;
        this.days = days;
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
    @Transactional(readOnly = true)
    public List<Claim> all(Actor actor, UUID caseId) {
        return store.all(caseId).stream()
                .filter(row -> actor.sees(Optional.of(row.workshop())))
                .map(row -> whole(actor, row))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<DecisionBasisChange> otherGrounds(
            Claim claim, Optional<StoredAssessment> latest, List<EvidenceItem> held) {
        return claim.decision()
                .flatMap(decision ->
                        DecisionBasisChange.of(decision, decider.frozen(decision.assessment(), latest), latest, held));
    }

    @Override
    public List<String> askable() {
        return RequestableItem.ALL;
    }

    @Override
    public Claim open(Actor actor, CaseNumber number, String amount, String currency, String useClass) {
        CaseReference ref = cases.require(actor, number);
        if (!actor.isWorkshop()) {
            throw new AccessDeniedException("a workshop claims for itself");
        }
        Money asked = Money.read(amount, currency);
        UseClass use = ClaimRequestParser.use(useClass);
        if (!store.open(ref.id(), actor.workshop().orElseThrow(), asked, use, now(), actor.user())) {
            throw ClaimConflictException.openAlready();
        }
        cases.noteClaim(ref.id(), ClaimState.DRAFT.id());
        events.publishEvent(new ClaimChangedEvent(ref.id()));
        trail.record(
                actor, "claim-opened", number.value(), Map.of("claim.amount", asked.toString(), "claim.use", use.id()));
        return of(actor, ref.id()).orElseThrow();
    }

    @Override
    public Claim act(Actor actor, CaseNumber number, ClaimStepRequest act) {
        CaseReference ref = cases.require(actor, number);
        ClaimRepository.Row row = visible(actor, ref, store.lockLatest(ref.id()));
        if (!act.action().isFor(actor.role())) {
            throw new AccessDeniedException("the step is another role's");
        }
        if (act.ifVersion().isPresent() && act.ifVersion().getAsLong() != row.version()) {
            Claim claim = whole(actor, row);
            throw ClaimConflictException.changedMeanwhile(claim, meanwhile.since(number, claim, act.ifVersion()));
        }
        Optional<DecisionProposal> waiting = proposals.waiting(row.id());
        ClaimState wanted = ClaimTransitions.after(row.state(), waiting.map(DecisionProposal::kind), act.action())
                .orElseThrow(() -> {
                    Claim claim = whole(actor, row);
                    return ClaimConflictException.step(
                            claim, act.action(), meanwhile.since(number, claim, act.ifVersion()));
                });
        if (act.action().seconds() && waiting.orElseThrow().by().equals(actor.user())) {
            throw ClaimConflictException.secondPerson(whole(actor, row));
        }
        act.check();
        Instant at = now();
        Optional<ClaimDecision> decision = decision(actor, ref, row, act, wanted, waiting, at);
        Optional<DecisionProposal> proposed = decision.filter(DefaultClaimService::needsASecondPerson)
                .map(made -> DecisionProposal.of(made, made.limit().orElseThrow()));
        ClaimState to = proposed.isPresent() ? row.state() : wanted;
        store.step(row, actor, act, to, at);
        days.note(row.id(), to, at);
        proposed.ifPresent(made -> proposals.keep(row.id(), row.version() + 1, made));
        cases.noteClaim(ref.id(), to.id());
        events.publishEvent(new ClaimChangedEvent(ref.id()));
        Map<String, Object> details = details(row, to, act, decision, proposed.isPresent());
        if (decision.isPresent() && proposed.isEmpty()) {
            decisions.keep(row.id(), row.version() + 1, decision.get());
            warranty.freeze(row.id(), reckoned(row));
            print(ref, row, details);
        }
        List<ClaimStep> all = store.steps(row.id());
        notices.tell(number, row.workshop(), all.get(all.size() - 1), all);
        String did = proposed.isPresent() ? "propose" : act.action().id();
        trail.record(actor, "claim-" + did, number.value(), details);
        return of(actor, ref.id()).orElseThrow();
    }

    private Optional<ClaimDecision> decision(
            Actor actor,
            CaseReference ref,
            ClaimRepository.Row row,
            ClaimStepRequest act,
            ClaimState to,
            Optional<DecisionProposal> waiting,
            Instant at) {
        if (act.action() == ClaimAction.CONFIRM) {
            return Optional.of(decider.confirm(actor, ref, waiting.orElseThrow(), at));
        }
        return act.action().decides()
                ? Optional.of(decider.decide(actor, ref, row.asked(), act, to, at))
                : Optional.empty();
    }

    /** Before the trail tells of the decision, so that its entry names the papers, and its lock is not held meanwhile. */
    private void print(CaseReference ref, ClaimRepository.Row row, Map<String, Object> details) {
        events.publishEvent(new ClaimDecidedEvent(row.id(), ref.number(), row.workshop()));
        Map<DocumentKind, Sha256> printed = papers.digests(row.id());
        for (DocumentKind kind : DocumentKind.values()) {
            if (!printed.containsKey(kind)) {
                throw new IllegalStateException("the decision has no " + kind.id());
            }
            details.put("claim." + kind.id(), printed.get(kind).hex());
        }
    }

    private static boolean needsASecondPerson(ClaimDecision decision) {
        return decision.confirmation().isEmpty()
                && decision.limit()
                        .filter(limit -> decision.paid().amount().compareTo(limit.amount()) > 0)
                        .isPresent();
    }

    @Override
    @Transactional(readOnly = true)
    public void requireAsked(Actor actor, CaseNumber number, int position) {
        CaseReference ref = cases.require(actor, number);
        requireAsked(actor, ref, visible(actor, ref, store.latest(ref.id())), position);
    }

    private RequestedItem requireAsked(Actor actor, CaseReference ref, ClaimRepository.Row row, int position) {
        if (!ClaimAction.ANSWER.isFor(actor.role())) {
            throw new AccessDeniedException("the workshop answers what it is asked for");
        }
        Claim claim = whole(actor, row);
        if (row.state() != ClaimState.EVIDENCE_ASKED) {
            throw ClaimConflictException.step(
                    claim, ClaimAction.ANSWER, meanwhile.since(ref.number(), claim, OptionalLong.empty()));
        }
        return claim.wanted().stream()
                .filter(one -> one.position() == position)
                .findFirst()
                .orElseThrow(() -> new NotFoundException("item " + position + " asked for in case " + ref.number()));
    }

    @Override
    public Claim answer(Actor actor, CaseNumber number, RequestedItemAnswer answer) {
        CaseReference ref = cases.require(actor, number);
        ClaimRepository.Row row = visible(actor, ref, store.lockLatest(ref.id()));
        RequestedItem item = requireAsked(actor, ref, row, answer.position());
        answer.check();
        ClaimStep ask = EvidenceRequestRepository.lastAsk(store.steps(row.id())).orElseThrow();
        asked.keep(row.id(), ask, answer, now(), actor.user());
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("claim.item", item.said());
        answer.evidence().ifPresent(id -> details.put("claim.evidence", id.toString()));
        if (answer.words() != null) {
            details.put("claim.words", answer.words());
        }
        trail.record(actor, "claim-item", number.value(), details);
        return of(actor, ref.id()).orElseThrow();
    }

    private static ClaimRepository.Row visible(Actor actor, CaseReference ref, Optional<ClaimRepository.Row> latest) {
        return latest.filter(found -> actor.sees(Optional.of(found.workshop())))
                .orElseThrow(() -> new NotFoundException("claim of case " + ref.number()));
    }

    private static Map<String, Object> details(
            ClaimRepository.Row row,
            ClaimState to,
            ClaimStepRequest act,
            Optional<ClaimDecision> decision,
            boolean proposed) {
        Map<String, Object> details = new LinkedHashMap<>();
        if (to != row.state()) {
            details.put("claim.state", Map.of("old", row.state().id(), "new", to.id()));
        }
        if (act.reason() != null) {
            details.put("claim.reason", act.reason());
        }
        if (!act.asksFor().isEmpty()) {
            details.put("claim.items", act.asksFor());
        }
        decision.ifPresent(made -> {
            if (proposed) {
                details.put("claim.kind", made.kind().id());
            }
            details.put("claim.paid", made.paid().toString());
            made.limit().ifPresent(limit -> details.put("claim.limit", limit.toString()));
            made.confirmation().ifPresent(second -> details.put("claim.proposed-by", made.by()));
            details.put("claim.assessment", made.assessmentSha256().hex());
            details.put("claim.edition", made.edition());
            details.put("claim.leaning", made.leaning().id());
        });
        return details;
    }

    private Claim whole(Actor actor, ClaimRepository.Row row) {
        List<ClaimStep> steps = store.steps(row.id());
        Optional<DecisionProposal> waiting = proposals.waiting(row.id());
        return new Claim(
                row.id(),
                row.workshop(),
                row.asked(),
                row.state(),
                row.version(),
                row.openedAt(),
                row.openedBy(),
                ClaimTransitions.from(row.state(), waiting.map(DecisionProposal::kind)).stream()
                        .filter(action -> action.isFor(actor.role()))
                        .filter(action ->
                                !action.seconds() || !waiting.orElseThrow().by().equals(actor.user()))
                        .toList(),
                shown(actor, steps),
                asked.of(row.id(), row.caseId(), steps),
                papers.digests(row.id()),
                waiting.filter(proposal -> !actor.isWorkshop()),
                decisions.of(row.id()),
                row.use(),
                warranty.frozen(row.id()).orElseGet(() -> reckoned(row)),
                store.place(row),
                objections.of(row.id()));
    }

    /** By the day the claim was handed in; by today where it is a draft still. */
    private WarrantyCalculation reckoned(ClaimRepository.Row row) {
        CaseFacts file = cases.facts(row.caseId());
        Instant handedIn = store.handedIn(row.id()).orElseGet(clock::instant);
        return warranty.reckon(
                file.ref().serial(),
                file.facts(),
                row.use(),
                LocalDate.ofInstant(handedIn, clock.getZone()),
                row.asked());
    }

    /** What the distributor's people propose and refuse among themselves is not the workshop's. */
    private static List<ClaimStep> shown(Actor actor, List<ClaimStep> steps) {
        return steps.stream()
                .filter(step -> !actor.isWorkshop() || step.from() != step.to())
                .toList();
    }

    private Instant now() {
        return clock.instant();
    }
}
