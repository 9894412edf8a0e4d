package org.voltdocket.assessment;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.ApplicationListener;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Assesses pending cases when the server starts, and every minute on one node. */
@Configuration(proxyBeanMethods = false)
class PendingAssessmentTasks {

    @Bean
    ApplicationListener<ApplicationReadyEvent> assessPendingAtStart(PendingAssessmentService assessments) {
        return started -> assessments.resume();
    }

    @Bean
    Task<Void> pendingAssessmentsTask(PendingAssessmentService assessments) {
        return Tasks.recurring("pending-assessments", FixedDelay.of(Duration.ofMinutes(1)))
                .execute((instance, context) -> assessments.assessAbandoned());
    }
}
