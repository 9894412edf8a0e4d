package org.voltdocket.claim;

import java.util.List;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** What was asked for does not fit where the claim stands. Answered 409, 412 or 403; nothing was changed. */
public final class ClaimConflictException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final transient ProblemDetail body;
    private final transient List<ClaimChange> changes;

    private ClaimConflictException(ProblemDetail body) {
        this(body, List.of());
    }

    private ClaimConflictException(ProblemDetail body, List<ClaimChange> changes) {
        super(body.getDetail());
        this.body = body;
        this.changes = List.copyOf(changes);
    }

    /** What others did since the caller read the claim, oldest first; empty where that is not the reason. */
    public List<ClaimChange> changes() {
        return changes;
    }

    /** The state does not allow the step; the answer names those it does. */
    static ClaimConflictException step(Claim claim, ClaimAction action, List<ClaimChange> changes) {
        return stands(
                ProblemDetails.of(
                        HttpStatus.CONFLICT,
                        "claim-step-refused",
                        "The claim's state does not allow this step",
                        "'" + action.id() + "' does not follow '"
                                + claim.state().id() + "', where the claim stands" + changed(claim) + ". It allows "
                                + allowed(claim) + ". Nothing was changed."),
                claim,
                changes);
    }

    /** The claim is not as it was when the caller read the version it names. */
    static ClaimConflictException changedMeanwhile(Claim claim, List<ClaimChange> changes) {
        return changed(HttpStatus.CONFLICT, claim, changes);
    }

    /** The case or its claim is not as it was when the caller got the entity tag it sends. */
    public static ClaimConflictException tagMeanwhile(Claim claim) {
        return changed(
                HttpStatus.PRECONDITION_FAILED,
                claim,
                claim.lastStep().map(ClaimChange::of).stream().toList());
    }

    private static ClaimConflictException changed(HttpStatus status, Claim claim, List<ClaimChange> changes) {
        return stands(
                ProblemDetails.of(
                        status,
                        "changed-meanwhile",
                        "Changed since it was read",
                        "The case or its claim was changed since you read it. The claim is now '"
                                + claim.state().id() + "'" + changed(claim)
                                + ". Nothing was changed now: read both again and repeat what still applies."),
                claim,
                changes);
    }

    /** The evidence leads to another assessment than the one that the caller saw. */
    static ClaimConflictException judgedMeanwhile(List<ClaimChange> changes) {
        ProblemDetail problem = ProblemDetails.of(
                HttpStatus.PRECONDITION_FAILED,
                "changed-meanwhile",
                "Changed since it was read",
                "The case was judged anew since you read it. The claim was not decided: read the assessment as it is now,"
                        + " then decide.");
        problem.setProperty("changes", changes);
        return new ClaimConflictException(problem, changes);
    }

    /** Who proposed a decision neither confirms nor refuses it. Answered 403. */
    static ClaimConflictException secondPerson(Claim claim) {
        return new ClaimConflictException(ProblemDetails.of(
                HttpStatus.FORBIDDEN,
                "claim-second-person",
                "Another person confirms",
                "You proposed this decision over "
                        + claim.proposal().orElseThrow().paid()
                        + " yourself. Above the limit somebody else confirms or refuses it. Nothing was changed."));
    }

    /** A case has one claim at a time. */
    static ClaimConflictException openAlready() {
        return new ClaimConflictException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "claim-open-already",
                "The case has a claim already",
                "A case has one claim at a time, and one is not yet settled or withdrawn. No second one was opened: go on"
                        + " with that one."));
    }

    /** There is nothing to object to or to answer, or one waits already. */
    static ClaimConflictException objection(String detail) {
        return new ClaimConflictException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "claim-objection",
                "Objections follow a decision, one after the other",
                detail + " Nothing was changed."));
    }

    /** There is nothing to rest a decision on. */
    static ClaimConflictException notJudged() {
        return new ClaimConflictException(ProblemDetails.of(
                HttpStatus.CONFLICT,
                "claim-not-judged",
                "The case is not judged as it stands",
                "A decision rests on an assessment of all that the case holds, and its last change is not judged. The claim"
                        + " was not decided: judge the case again on its page, then decide."));
    }

    private static ClaimConflictException stands(ProblemDetail problem, Claim claim, List<ClaimChange> changes) {
        problem.setProperty("state", claim.state().id());
        problem.setProperty(
                "allowedActions", allowedOf(claim).stream().map(ClaimAction::id).toList());
        claim.lastStep().ifPresent(last -> problem.setProperty("lastStep", ClaimView.StepView.of(last)));
        problem.setProperty("changes", changes);
        return new ClaimConflictException(problem, changes);
    }

    private static String changed(Claim claim) {
        return claim.lastStep()
                .map(last -> " since " + last.by() + " took the step '"
                        + last.action().id() + "' at " + last.at())
                .orElse("");
    }

    private static List<ClaimAction> allowedOf(Claim claim) {
        return ClaimTransitions.from(claim.state(), claim.proposal().map(DecisionProposal::kind));
    }

    private static String allowed(Claim claim) {
        List<ClaimAction> steps = allowedOf(claim);
        return steps.isEmpty()
                ? "nothing more"
                : steps.stream().map(step -> "'" + step.id() + "'").collect(Collectors.joining(", "));
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatusCode.valueOf(body.getStatus());
    }

    @Override
    public ProblemDetail getBody() {
        return body;
    }
}
