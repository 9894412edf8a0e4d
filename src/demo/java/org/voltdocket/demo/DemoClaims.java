package org.voltdocket.demo;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.kernel.Actor;

/** Creates the claims of the demo, at least one in each state, by the steps that a workshop and a clerk would take. */
@Component
@Profile("demo")
class DemoClaims {

    /**
     * The claim of a case and its last step.
     *
     * @param way actions in their order; the reason of the decision is {@code why}
     */
    record Wanted(String amount, String use, String way, String why) {}

    /** In the order of {@link DemoCase#ALL}. */
    static final List<Wanted> ALL = List.of(
            new Wanted("148.50", "private", "submit take decline", """
                    The battery passes and the vehicle charges as it should; 12.6 V at rest is no fault. Nothing is owed."""),
            new Wanted("96.90", "private", "submit take decline settle", """
                    The lamps were left on; charged, the battery passes. Nothing is owed, and the owner was told so."""),
            new Wanted("112.00", "private", "submit take goodwill", """
                    Worn, not defective; the workshop sent every test that we asked for, so we meet it half way."""),
            new Wanted("134.90", "private", "submit take approve", """
                    One cell is shorted: both tests and the rest voltage say so, two days after fitting."""),
            new Wanted("119.00", "private", "submit take approve settle", """
                    Rest voltage is full and collapses on cranking: an inner connection is broken. Paid in full."""),
            new Wanted("129.00", "commercial", "submit take approve", """
                    It does not hold a charge at rest with nothing connected; the recording shows it."""),
            new Wanted("141.50", "private", "submit take decline", """
                    The alternator does not charge; every battery will be flat in this car until that is repaired."""),
            new Wanted("158.00", "private", "submit take", ""),
            new Wanted("219.90", "private", "submit", ""),
            new Wanted("184.00", "private", "submit take ask answer", ""),
            new Wanted("127.30", "private", "submit", ""),
            new Wanted("164.90", "private", "submit take ask", ""),
            new Wanted("89.50", "commercial", "submit take goodwill", """
                    Too many halts for this battery; a good customer, once, and with advice for the round."""),
            new Wanted("102.00", "private", "submit withdraw", ""),
            new Wanted("78.90", "private", "", ""),
            new Wanted("139.00", "private", "submit take ask", ""),
            new Wanted("229.00", "private", "submit take goodwill settle", """
                    The battery was low and sound; paid once without owing it, the vehicle was to be looked at."""),
            new Wanted("229.00", "private", "submit", ""));

    private final ClaimService claims;
    private final ClaimStepService steps;

    DemoClaims(ClaimService claims, ClaimStepService steps) {
        this.claims = claims;
        this.steps = steps;
    }

    /** Claims for the case unless somebody has; a claim that was begun is left as it is. */
    void enter(CaseReference file, Wanted wanted, Actor workshop, Actor clerk) {
        if (claims.of(Actor.system(), file.id()).isPresent()) {
            return;
        }
        steps.open(workshop, file.number(), wanted.amount(), "EUR", wanted.use());
        for (String step : wanted.way().isEmpty() ? new String[0] : wanted.way().split(" ")) {
            ClaimAction action = ClaimAction.of(step).orElseThrow();
            ClaimStepRequest act = new ClaimStepRequest(
                    action,
                    action.decides() ? wanted.why() : null,
                    action == ClaimAction.ASK ? List.of("charging-test") : List.of(),
                    List.of(),
                    paid(wanted, action),
                    OptionalLong.empty(),
                    Optional.empty());
            RetryWhileBusy.with(() -> steps.act(action.isFor(workshop.role()) ? workshop : clerk, file.number(), act));
        }
    }

    /** Goodwill pays about half: whole tens. */
    private static Optional<String> paid(Wanted wanted, ClaimAction action) {
        return action == ClaimAction.GOODWILL
                ? Optional.of((int) (Double.parseDouble(wanted.amount()) / 20) * 10 + ".00")
                : Optional.empty();
    }
}
