package org.voltdocket.server.startup;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.voltdocket.assessment.edition.EditionMismatchException;

/** Says why a server with another text of a released edition does not start. */
class EditionMismatchFailureAnalyzer extends AbstractFailureAnalyzer<EditionMismatchException> {

    @Override
    protected FailureAnalysis analyze(Throwable root, EditionMismatchException cause) {
        return new FailureAnalysis(cause.getMessage(), cause.action(), cause);
    }
}
