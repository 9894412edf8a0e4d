package org.voltdocket.claim.view;

import java.util.List;
import java.util.stream.Collectors;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimTransitions;
import org.voltdocket.claim.Contribution;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.kernel.RequestException;

/** Refusals of claim requests that do not fit the state of the claim or of its case. Nothing was changed. */
public final class ClaimConflicts {

    private static final int FORBIDDEN = 403;
    private static final int CONFLICT = 409;
    private static final int PRECONDITION_FAILED = 412;

    private ClaimConflicts() {}

    /** The state does not allow the action; the answer lists the allowed ones. */
    public static RequestException actionNotAllowed(Claim claim, ClaimAction action, List<ClaimChange> changes) {
        String message = "'" + action.id() + "' is not allowed in state '"
                + claim.state().id() + "', which the claim has" + lastStep(claim) + ". Allowed: " + allowed(claim)
                + ". Nothing was changed.";
        return withState(RequestException.of(CONFLICT, "claim-step-refused", message), claim, changes);
    }

    /** The claim does not have the version that the caller read. */
    public static RequestException versionChanged(Claim claim, List<ClaimChange> changes) {
        return changed(CONFLICT, claim, changes);
    }

    /** The case or its claim does not have the entity tag that the caller read. */
    public static RequestException entityTagChanged(Claim claim) {
        return changed(
                PRECONDITION_FAILED,
                claim,
                claim.lastStep().map(ClaimChange::of).stream().toList());
    }

    private static RequestException changed(int status, Claim claim, List<ClaimChange> changes) {
        String message = "The case or its claim was changed since you read it. The claim is now in state '"
                + claim.state().id() + "'" + lastStep(claim)
                + ". Your request changed nothing: read both again and repeat what still applies.";
        return withState(RequestException.of(status, "changed-since-read", message), claim, changes);
    }

    /** The case has a newer assessment than the one that the caller read. */
    public static RequestException assessmentChanged(List<ClaimChange> changes) {
        return RequestException.of(
                        PRECONDITION_FAILED,
                        "changed-since-read",
                        "The case was assessed again since you read it. The claim was not decided: read the current"
                                + " assessment, then decide.")
                .with("changes", changes);
    }

    /** The person who proposed a decision neither confirms nor refuses it. */
    public static RequestException secondPerson(Claim claim) {
        return RequestException.of(
                FORBIDDEN,
                "claim-second-person",
                "You proposed this decision over "
                        + claim.proposal().orElseThrow().paid()
                        + " yourself. Above the limit another person confirms or refuses it. Nothing was changed.");
    }

    /** Whoever uploaded evidence, changed facts or opened the claim does not decide it. */
    public static RequestException sameDuties(Claim claim) {
        String what = claim.contributions().stream()
                .map(contribution -> switch (contribution) {
                    case EVIDENCE -> "uploaded evidence";
                    case FACTS -> "changed facts";
                    case CLAIM -> "opened the claim";
                })
                .collect(Collectors.joining(" and "));
        return RequestException.of(
                        FORBIDDEN,
                        "claim-same-duties",
                        "You " + what
                                + " of this case. Whoever contributed to a case does not decide it: ask another clerk"
                                + " or an administrator. Nothing was changed.")
                .with(
                        "contributions",
                        claim.contributions().stream().map(Contribution::id).toList());
    }

    /** A case has one open claim at a time. */
    public static RequestException openAlready() {
        return RequestException.of(
                CONFLICT,
                "claim-open-already",
                "A case has one claim at a time, and this case has a claim that is neither settled nor withdrawn. No second"
                        + " claim was opened: continue with that one.");
    }

    /** There is no decision to object to, no objection to answer, or an objection is open already. */
    public static RequestException objection(String message) {
        return RequestException.of(CONFLICT, "claim-objection", message + " Nothing was changed.");
    }

    /** The case has no current assessment that a decision could be based on. */
    public static RequestException notAssessed() {
        return RequestException.of(
                CONFLICT,
                "claim-not-judged",
                "A decision is based on an assessment of everything that the case contains, and the latest change of the"
                        + " case is not assessed yet. The claim was not decided: reassess the case on its page, then"
                        + " decide.");
    }

    private static RequestException withState(RequestException refused, Claim claim, List<ClaimChange> changes) {
        refused.with("state", claim.state().id());
        refused.with(
                "allowedActions",
                allowedActions(claim).stream().map(ClaimAction::id).toList());
        claim.lastStep().ifPresent(last -> refused.with("lastStep", ClaimView.StepView.of(last)));
        return refused.with("changes", changes);
    }

    private static String lastStep(Claim claim) {
        return claim.lastStep()
                .map(last -> " since " + last.by() + " took the step '"
                        + last.action().id() + "' at " + last.at())
                .orElse("");
    }

    private static List<ClaimAction> allowedActions(Claim claim) {
        return ClaimTransitions.from(claim.state(), claim.proposal().map(DecisionProposal::kind));
    }

    private static String allowed(Claim claim) {
        List<ClaimAction> actions = allowedActions(claim);
        return actions.isEmpty()
                ? "no further step"
                : actions.stream().map(action -> "'" + action.id() + "'").collect(Collectors.joining(", "));
    }
}
