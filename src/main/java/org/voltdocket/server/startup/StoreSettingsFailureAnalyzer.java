package org.voltdocket.server.startup;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.voltdocket.evidence.original.InvalidStoreSettingsException;

/** Says why a server that cannot reach its archive's originals as it is set up does not start. */
class StoreSettingsFailureAnalyzer extends AbstractFailureAnalyzer<InvalidStoreSettingsException> {

    @Override
    protected FailureAnalysis analyze(Throwable root, InvalidStoreSettingsException cause) {
        return new FailureAnalysis(cause.getMessage(), cause.action(), cause);
    }
}
