package org.voltdocket.server.command;

import java.io.Console;
import java.io.PrintStream;
import java.time.Clock;
import java.util.Arrays;
import java.util.Optional;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.AutoConfigurationPackage;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.data.jpa.autoconfigure.DataJpaRepositoriesAutoConfiguration;
import org.springframework.boot.hibernate.autoconfigure.HibernateJpaAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcClientAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcTemplateAutoConfiguration;
import org.springframework.boot.transaction.autoconfigure.TransactionAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.FilterType;
import org.springframework.context.annotation.Import;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.MicrosecondClock;
import org.voltdocket.trail.Trail;

/**
 * Gives a server without a usable administrator one again: {@code java -jar voltdocket.jar --recover-administrator=NAME}, on
 * the server's machine and with its environment.
 *
 * <p>The account is enabled and gets the password in {@code VOLTDOCKET_ADMIN_PASSWORD}, or one typed at the terminal; where
 * there is no account of that name, it is created. The trail records it.
 */
public final class RecoverAdministrator {

    private static final String OPTION = "--recover-administrator=";

    private RecoverAdministrator() {}

    /** Whether the arguments name this command. */
    public static boolean isAsked(String... arguments) {
        return name(arguments).isPresent();
    }

    /** @return 0 where the administrator can sign in now, 1 where the name or password is refused */
    public static int run(PrintStream out, String... arguments) {
        String name = name(arguments).orElseThrow();
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Parts.class)
                .web(WebApplicationType.NONE)
                .logStartupInfo(false)
                .run(arguments)) {
            context.getBean(AccountService.class)
                    .recoverAdministrator(
                            name, password(context.getEnvironment().getProperty("voltdocket.admin.password")));
            out.println("The administrator " + name + " is enabled and has the new password. The trail records it.");
            return 0;
        } catch (RuntimeException e) {
            out.println("Nothing was changed: " + e.getMessage());
            return 1;
        }
    }

    private static String password(String given) {
        if (given != null && !given.isBlank()) {
            return given;
        }
        Console console = System.console();
        if (console == null) {
            throw new IllegalStateException(
                    "set VOLTDOCKET_ADMIN_PASSWORD to the new password, or run this in a terminal.");
        }
        return new String(console.readPassword("New password: "));
    }

    private static Optional<String> name(String... arguments) {
        return Arrays.stream(arguments)
                .filter(one -> one.startsWith(OPTION))
                .map(one -> one.substring(OPTION.length()))
                .findFirst();
    }

    /** The beans that the command needs. No {@code @Configuration}, so that the server's own scan ignores it. */
    @AutoConfigurationPackage(basePackages = "org.voltdocket.access")
    @ComponentScan(
            basePackageClasses = {AccountService.class, Trail.class},
            excludeFilters =
                    @ComponentScan.Filter(
                            type = FilterType.REGEX,
                            pattern = "org\\.voltdocket\\.(access|trail)\\.(web|session|passkey|openid)\\..*"))
    @Import(AccountTrail.class)
    @ImportAutoConfiguration({
        DataSourceAutoConfiguration.class,
        HibernateJpaAutoConfiguration.class,
        DataJpaRepositoriesAutoConfiguration.class,
        JdbcTemplateAutoConfiguration.class,
        JdbcClientAutoConfiguration.class,
        TransactionAutoConfiguration.class
    })
    static class Parts {

        @Bean
        Clock clock() {
            return MicrosecondClock.utc();
        }
    }
}
