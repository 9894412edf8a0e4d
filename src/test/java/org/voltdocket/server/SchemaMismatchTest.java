package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.voltdocket.Voltdocket;
import org.voltdocket.server.startup.SchemaMismatchFailureAnalyzer;
import org.voltdocket.support.OwnDatabase;

/** A server on the database of an older build says so in one sentence and changes nothing of it. */
class SchemaMismatchTest {

    private static final String TABLES = "select count(*) from information_schema.tables where table_schema = 'public'";
    private static final String MIGRATIONS = "select sum(checksum::bigint) from flyway_schema_history";

    @Test
    void theDatabaseOfAnOlderBuildIsExplainedAndLeftUntouched(@TempDir Path folder) throws Exception {
        try (OwnDatabase database = new OwnDatabase(folder.resolve("database"))) {
            migrateAsAnOlderBuild(folder, database);
            long migrations = database.number(MIGRATIONS);
            Throwable failure = catchThrowable(() -> new SpringApplication(Voltdocket.class)
                    .run(
                            "--spring.datasource.url=" + database.url(),
                            "--spring.datasource.username=postgres",
                            "--spring.datasource.password=",
                            "--server.port=0"));
            FailureAnalysis analysis = new SchemaMismatchFailureAnalyzer().analyze(failure);
            assertThat(analysis).as("%s", failure).isNotNull();
            assertThat(analysis.getDescription())
                    .contains("created by another build of Voltdocket", "left untouched")
                    .containsOnlyOnce(".");
            assertThat(analysis.getAction()).contains("SPRING_DATASOURCE_URL");
            assertThat(database.number(TABLES)).isEqualTo(2);
            assertThat(database.number(MIGRATIONS)).isEqualTo(migrations);
        }
    }

    private static void migrateAsAnOlderBuild(Path folder, OwnDatabase database) throws Exception {
        Path migrations = Files.createDirectories(folder.resolve("migrations"));
        Files.writeString(
                migrations.resolve("V001__trail_create_entries.sql"), "create table trail_entry (position bigint);");
        Flyway.configure()
                .dataSource(database.url(), "postgres", "")
                .locations("filesystem:" + migrations)
                .load()
                .migrate();
        assertThat(database.number(TABLES)).isEqualTo(2);
    }
}
