package org.voltdocket.server;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.voltdocket.assessment.edition.EditionChanged;

/** Says why a server with another text of a released edition does not start. */
class EditionChangedAnalyzer extends AbstractFailureAnalyzer<EditionChanged> {

    @Override
    protected FailureAnalysis analyze(Throwable root, EditionChanged cause) {
        return new FailureAnalysis(cause.getMessage(), cause.action(), cause);
    }
}
