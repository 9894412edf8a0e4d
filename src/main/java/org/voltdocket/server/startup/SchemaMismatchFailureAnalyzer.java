package org.voltdocket.server.startup;

import org.flywaydb.core.api.exception.FlywayValidateException;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Explains a database whose migrations are not those of this build. Flyway validates before it changes anything. */
public class SchemaMismatchFailureAnalyzer extends AbstractFailureAnalyzer<FlywayValidateException> {

    @Override
    protected FailureAnalysis analyze(Throwable root, FlywayValidateException cause) {
        return new FailureAnalysis(
                "The database was created by another build of Voltdocket, whose migrations differ from those of this build;"
                        + " it was left untouched.",
                "Name an empty database in SPRING_DATASOURCE_URL, or start the build that created this one.",
                cause);
    }
}
