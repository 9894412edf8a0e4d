package org.voltdocket.server;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.voltdocket.evidence.store.StoreRefused;

/** Says why a server that cannot reach its archive's originals as it is set up does not start. */
class StoreRefusedAnalyzer extends AbstractFailureAnalyzer<StoreRefused> {

    @Override
    protected FailureAnalysis analyze(Throwable root, StoreRefused cause) {
        return new FailureAnalysis(cause.getMessage(), cause.action(), cause);
    }
}
