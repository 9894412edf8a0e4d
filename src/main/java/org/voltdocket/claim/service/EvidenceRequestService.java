package org.voltdocket.claim.service;

import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.RequestableItem;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.claim.repository.ClaimAssembler;
import org.voltdocket.claim.repository.ClaimLocator;
import org.voltdocket.claim.repository.EvidenceRequestRepository;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.claim.repository.RequestedItemAnswer;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.claim.view.ConcurrentChanges;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/** Answers of workshops to the items of an evidence request. */
@Service
@Transactional
public class EvidenceRequestService {

    private final ClaimLocator locator;
    private final ClaimAssembler assembler;
    private final EvidenceRequestRepository answers;
    private final ConcurrentChanges changes;
    private final Trail trail;
    private final Clock clock;

    EvidenceRequestService(
            ClaimLocator locator,
            ClaimAssembler assembler,
            EvidenceRequestRepository answers,
            ConcurrentChanges changes,
            Trail trail,
            Clock clock) {
        this.locator = locator;
        this.assembler = assembler;
        this.answers = answers;
        this.changes = changes;
        this.trail = trail;
        this.clock = clock;
    }

    /** Identifiers that a request may name: kinds of evidence, then names of facts. */
    public List<String> requestableItems() {
        return RequestableItem.ALL;
    }

    /**
     * Checks that an item is requested now, before a file for it is received.
     *
     * @throws RequestException (404) if there is no such case, claim or item for this actor
     * @throws AccessDeniedException for other roles than {@code WORKSHOP}
     * @throws RequestException if no evidence is requested now
     */
    @Transactional(readOnly = true)
    public void requireRequested(Actor actor, CaseNumber number, int position) {
        requested(actor, locator.find(actor, number), position);
    }

    /**
     * Stores an answer to one requested item. The claim stays in {@link ClaimState#EVIDENCE_ASKED} until the workshop takes the
     * step {@link ClaimAction#ANSWER}.
     *
     * @throws RequestException (404) if there is no such case, claim or item for this actor
     * @throws AccessDeniedException for other roles than {@code WORKSHOP}
     * @throws RequestException if no evidence is requested now, or the answer has neither evidence nor text
     */
    public Claim answer(Actor actor, CaseNumber number, RequestedItemAnswer answer) {
        LocatedClaim claim = locator.lock(actor, number);
        RequestedItem item = requested(actor, claim, answer.position());
        answer.check();
        answers.keep(claim.row().id(), answer, clock.instant(), actor.user());
        trail.record(actor, "claim-item", number.value(), details(item, answer));
        return assembler.assemble(actor, claim.row());
    }

    private RequestedItem requested(Actor actor, LocatedClaim claim, int position) {
        if (!ClaimAction.ANSWER.isFor(actor.role())) {
            throw new AccessDeniedException("only the workshop answers evidence requests");
        }
        Claim current = assembler.assemble(actor, claim.row());
        CaseNumber number = claim.caseFile().number();
        if (current.state() != ClaimState.EVIDENCE_ASKED) {
            throw ClaimConflicts.actionNotAllowed(
                    current, ClaimAction.ANSWER, changes.since(number, current, OptionalLong.empty()));
        }
        return current.requestedItems().stream()
                .filter(item -> item.position() == position)
                .findFirst()
                .orElseThrow(() -> RequestException.notFound("requested item " + position + " in case " + number));
    }

    private static Map<String, Object> details(RequestedItem item, RequestedItemAnswer answer) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("claim.item", item.name());
        answer.evidence().ifPresent(id -> details.put("claim.evidence", id.toString()));
        if (answer.words() != null) {
            details.put("claim.words", answer.words());
        }
        return details;
    }
}
