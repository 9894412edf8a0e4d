package org.voltdocket.server.command;

import java.io.PrintStream;
import java.util.Arrays;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.flyway.autoconfigure.FlywayAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Import;
import org.voltdocket.server.startup.DatabaseMigration;
import org.voltdocket.server.startup.StartupException;

/**
 * Creates or updates the tables and the server's role without a server: {@code java -jar voltdocket.jar --migrate}, with the
 * owner in {@code SPRING_FLYWAY_USER} and {@code SPRING_FLYWAY_PASSWORD}. The server itself then needs no owner.
 */
public final class MigrateDatabase {

    private static final String OPTION = "--migrate";

    private MigrateDatabase() {}

    /** Whether the arguments name this command. */
    public static boolean isAsked(String... arguments) {
        return Arrays.asList(arguments).contains(OPTION);
    }

    /** @return 0 where the tables are those of this build, 1 where that failed */
    public static int run(PrintStream out, String... arguments) {
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Parts.class)
                .web(WebApplicationType.NONE)
                .logStartupInfo(false)
                .run(arguments)) {
            out.println("The database has the tables of this build.");
            return 0;
        } catch (RuntimeException e) {
            Throwable root = e;
            while (root.getCause() != null && !(root instanceof StartupException)) {
                root = root.getCause();
            }
            out.println("The database was not migrated: " + root.getMessage());
            return 1;
        }
    }

    /** The beans that the command needs. No {@code @Configuration}, so that the server's own scan ignores it. */
    @Import(DatabaseMigration.class)
    @ImportAutoConfiguration({DataSourceAutoConfiguration.class, FlywayAutoConfiguration.class})
    static class Parts {}
}
