package org.voltdocket.assessment.rerun;

import org.voltdocket.kernel.RequestException;

/** Refusals of requests about runs over the archive. Nothing was changed. */
public final class RunErrors {

    private RunErrors() {}

    /** The body or a parameter of the request is invalid. */
    public static RequestException invalid(String detail) {
        return RequestException.of(422, "reassessment-refused", detail + " Nothing was started.");
    }

    /** There is no such run. */
    static RequestException unknown() {
        return RequestException.of(404, "not-found", "There is no such reassessment run. Check the address.");
    }

    /** The state does not allow the action. */
    static RequestException action(ReassessmentRun run, RunAction action) {
        return RequestException.of(
                409,
                "reassessment-step-refused",
                "'" + action.id() + "' does not follow '" + run.state().id()
                        + "', the state of the run. Nothing was changed. Read the run again.");
    }
}
