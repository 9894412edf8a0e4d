package org.voltdocket.server.startup;

import java.time.Duration;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Logs the address of the server when it is ready. */
@Component
class ReadyMessage {

    private static final Logger LOG = LoggerFactory.getLogger(ReadyMessage.class);

    @EventListener
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void on(ApplicationReadyEvent event) {
        Environment environment = event.getApplicationContext().getEnvironment();
        Duration taken = event.getTimeTaken();
        LOG.info(
                "Voltdocket is ready at http://localhost:{}/ after {} s.",
                environment.getProperty("local.server.port"),
                taken == null ? "?" : String.format(Locale.ROOT, "%.1f", taken.toMillis() / 1000.0));
    }
}
