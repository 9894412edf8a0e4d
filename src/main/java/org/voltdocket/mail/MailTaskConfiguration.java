package org.voltdocket.mail;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The scheduler's task that sends mail, on one node at a time. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty("spring.mail.host")
class MailTaskConfiguration {

    /** So short that mail leaves soon after the commit of its transaction; looking for due mail reads one index. */
    private static final Duration DELAY = Duration.ofSeconds(1);

    @Bean
    Task<Void> mailDelivery(OutboxSender sender, MailSettings settings) {
        return Tasks.recurring("mail-delivery", FixedDelay.of(DELAY)).execute((instance, context) -> {
            if (settings.isOn()) {
                sender.sendDue();
            }
        });
    }
}
