package org.voltdocket.server;

import java.time.Duration;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;
import org.springframework.stereotype.Component;

/** Says in plain words where the server is, and in the demo who may sign in. */
@Component
class ReadyMessage {

    private static final Logger LOG = LoggerFactory.getLogger(ReadyMessage.class);

    @EventListener
    void on(ApplicationReadyEvent event) {
        Environment environment = event.getApplicationContext().getEnvironment();
        Duration taken = event.getTimeTaken();
        LOG.info(
                "Voltdocket is ready at http://localhost:{}/ after {} s.",
                environment.getProperty("local.server.port"),
                taken == null ? "?" : String.format(Locale.ROOT, "%.1f", taken.toMillis() / 1000.0));
        if (environment.acceptsProfiles(Profiles.of("demo"))) {
            LOG.info(
                    "This is the demo, all of it invented. Sign in as workshop, workshop2, clerk, auditor or admin; the"
                            + " password of each is {}.",
                    DemoAccounts.PASSWORD);
        }
    }
}
