package org.voltdocket.assessment;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Looks every minute, on one node at a time, for cases whose last change nobody judged. */
@Configuration(proxyBeanMethods = false)
class PendingAssessmentsTask {

    @Bean
    Task<Void> assessmentsLeftBehind(AssessmentListener listener) {
        return Tasks.recurring("assessments-left-behind", FixedDelay.of(Duration.ofMinutes(1)))
                .execute((instance, context) -> listener.assessLongDue());
    }
}
