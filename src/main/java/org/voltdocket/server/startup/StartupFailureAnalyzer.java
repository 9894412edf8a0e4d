package org.voltdocket.server.startup;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Prints the sentence and the remedy instead of a stack of frames. */
class StartupFailureAnalyzer extends AbstractFailureAnalyzer<StartupException> {

    @Override
    protected FailureAnalysis analyze(Throwable root, StartupException cause) {
        return new FailureAnalysis(cause.getMessage(), cause.action(), cause);
    }
}
