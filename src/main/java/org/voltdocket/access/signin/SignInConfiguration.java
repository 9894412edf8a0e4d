package org.voltdocket.access.signin;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Settings, and the task that removes what is no longer needed. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(SignInSettings.class)
class SignInConfiguration {

    @Bean
    Task<Void> signInCleanup(SignInThrottle throttle, SignInRepository signIns, UsedChallenges challenges) {
        return Tasks.recurring("sign-in-cleanup", FixedDelay.of(Duration.ofHours(1)))
                .execute((instance, context) -> {
                    throttle.removeForgotten();
                    signIns.removeOld();
                    challenges.removeExpired();
                });
    }
}
