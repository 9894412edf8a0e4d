package org.voltdocket.server.command;

import java.io.PrintStream;
import java.time.Clock;
import java.util.Arrays;
import java.util.Optional;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.jdbc.autoconfigure.DataSourceAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.DataSourceTransactionManagerAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcClientAutoConfiguration;
import org.springframework.boot.jdbc.autoconfigure.JdbcTemplateAutoConfiguration;
import org.springframework.boot.transaction.autoconfigure.TransactionAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.FilterType;
import org.voltdocket.trail.ChainVerification;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailHead;

/**
 * Verifies the trail without a server: {@code java -jar voltdocket.jar --verify-trail [--head=POSITION:HASH]}, with the
 * environment that the server has. Reads only. The demo's database has to be at rest, for it belongs to one process.
 */
public final class VerifyTrail {

    /** What asks for it. */
    public static final String OPTION = "--verify-trail";

    private static final String HEAD = "--head=";

    static final int HOLDS = 0;
    static final int BROKEN = 1;
    static final int CANNOT_TELL = 2;

    private VerifyTrail() {}

    /** Whether the arguments ask for it. */
    public static boolean isAsked(String... arguments) {
        return Arrays.asList(arguments).contains(OPTION);
    }

    /** @return 0 where the chain holds, 1 where a link is broken, 2 where it cannot be told */
    public static int run(PrintStream out, String... arguments) {
        try {
            Optional<TrailHead> noted = Arrays.stream(arguments)
                    .filter(one -> one.startsWith(HEAD))
                    .findFirst()
                    .map(one -> TrailHead.parse(one.substring(HEAD.length())));
            try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Lean.class)
                    .web(WebApplicationType.NONE)
                    .logStartupInfo(false)
                    .run(arguments)) {
                return tell(out, context.getBean(Trail.class).verify(noted), noted);
            }
        } catch (RuntimeException e) {
            out.println("The trail cannot be verified: " + e.getMessage());
            return CANNOT_TELL;
        }
    }

    private static int tell(PrintStream out, ChainVerification check, Optional<TrailHead> noted) {
        if (check.firstBroken().isPresent()) {
            ChainVerification.BrokenLink broken = check.firstBroken().get();
            out.println("BROKEN at entry " + broken.position()
                    + broken.at().map(at -> " of " + at).orElse("") + " ("
                    + broken.fault().id() + "): " + broken.why() + ".");
            check.head().ifPresent(head -> out.println("The last entry that holds is " + head + "."));
            return BROKEN;
        }
        out.println("The trail holds: " + check.entries() + " entries"
                + noted.map(one -> ", and entry " + one.position() + " is as noted")
                        .orElse("") + ".");
        check.head()
                .ifPresent(head -> out.println("Its head is " + head
                        + ". Note it outside the server: with --head= it shows later whether the end was cut off."));
        return HOLDS;
    }

    /**
     * The beans that the verification needs, with the demo's database where the demo is on the class path. Without
     * {@code @Configuration}, so that the component scan of the server does not find it.
     */
    @ComponentScan(
            basePackageClasses = Trail.class,
            excludeFilters =
                    @ComponentScan.Filter(type = FilterType.REGEX, pattern = "org\\.voltdocket\\.trail\\.web\\..*"))
    @ComponentScan("org.voltdocket.demo.database")
    @ImportAutoConfiguration({
        DataSourceAutoConfiguration.class,
        DataSourceTransactionManagerAutoConfiguration.class,
        JdbcTemplateAutoConfiguration.class,
        JdbcClientAutoConfiguration.class,
        TransactionAutoConfiguration.class
    })
    static class Lean {

        @Bean
        Clock clock() {
            return Clock.systemUTC();
        }
    }
}
