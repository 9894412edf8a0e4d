package org.voltdocket.claim.service;

import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.decision.DecisionFactory;
import org.voltdocket.claim.decision.DecisionRecorder;
import org.voltdocket.claim.repository.ClaimLocator;
import org.voltdocket.claim.repository.ClaimRepository;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.claim.view.ClaimConflicts;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.warranty.UseClass;

/** Opens claims and takes their steps, decisions among them. Locks in this order: claim, case, trail. */
@Service
@Transactional
public class ClaimStepService {

    private final ClaimLocator locator;
    private final ClaimRepository claims;
    private final ClaimStepValidator validator;
    private final DecisionFactory decisionFactory;
    private final DecisionRecorder decisions;
    private final ClaimChangeRecorder changes;
    private final Clock clock;

    ClaimStepService(
            ClaimLocator locator,
            ClaimRepository claims,
            ClaimStepValidator validator,
            DecisionFactory decisionFactory,
            DecisionRecorder decisions,
            ClaimChangeRecorder changes,
            Clock clock) {
        this.locator = locator;
        this.claims = claims;
        this.validator = validator;
        this.decisionFactory = decisionFactory;
        this.decisions = decisions;
        this.changes = changes;
        this.clock = clock;
    }

    /**
     * Opens a claim as a draft. For {@code WORKSHOP}.
     *
     * @param amount text such as {@code 129.90}
     * @param currency ISO 4217, such as {@code EUR}
     * @param useClass identifier of a {@link UseClass}; null or blank for private use
     * @throws RequestException (404) if there is no such case for this actor
     * @throws AccessDeniedException for other roles
     * @throws RequestException if amount, currency or use is invalid, or the case has an open claim
     */
    public Claim open(Actor actor, CaseNumber number, String amount, String currency, String useClass) {
        CaseReference caseFile = locator.requireCase(actor, number);
        if (!actor.isWorkshop()) {
            throw new AccessDeniedException("only a workshop opens claims");
        }
        Money claimed = Money.read(amount, currency);
        UseClass use = ClaimRequestParser.use(useClass);
        Instant at = now();
        if (!claims.open(caseFile.id(), actor.workshop().orElseThrow(), claimed, use, at, actor.user())) {
            throw ClaimConflicts.openAlready();
        }
        LocatedClaim opened = locator.find(actor, number);
        Map<String, Object> details = Map.of("claim.amount", claimed.toString(), "claim.use", use.id());
        return changes.opened(actor, opened, at, details);
    }

    /**
     * Takes one step.
     *
     * @throws RequestException (404) if there is no such case or claim for this actor
     * @throws AccessDeniedException if the step is not for this role
     * @throws RequestException if the state does not allow the step, the claim or the assessment changed since the caller read
     *     it, or a member of the request is missing or invalid
     */
    public Claim act(Actor actor, CaseNumber number, ClaimStepRequest request) {
        LocatedClaim claim = locator.lock(actor, number);
        ClaimState target = validator.validate(actor, claim, request);
        Instant at = now();
        Optional<ClaimDecision> decision = decide(actor, claim, request, target, at);
        ClaimState to = decision.filter(ClaimDecision::needsSecondPerson).isPresent()
                ? claim.row().state()
                : target;
        claims.step(claim.row(), actor, request, to, at);
        Map<String, Object> details = StepDetails.of(claim.row(), to, request, decision);
        decision.ifPresent(made -> details.putAll(decisions.record(claim, made)));
        return changes.stepTaken(actor, claim, request.action(), at, details);
    }

    private Optional<ClaimDecision> decide(
            Actor actor, LocatedClaim claim, ClaimStepRequest request, ClaimState target, Instant at) {
        if (request.action() == ClaimAction.CONFIRM) {
            return Optional.of(decisionFactory.confirm(
                    actor, claim.caseFile(), claim.proposal().orElseThrow(), at));
        }
        return request.action().decides()
                ? Optional.of(decisionFactory.decide(
                        actor, claim.caseFile(), claim.row().amount(), request, target, at))
                : Optional.empty();
    }

    /** PostgreSQL stores microseconds; an answer shows the moment as it is stored. */
    private Instant now() {
        return clock.instant();
    }
}
