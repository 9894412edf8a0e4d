package org.voltdocket.notice;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The scheduler's tasks that look for notices, each on one node at a time. */
@Configuration(proxyBeanMethods = false)
class NoticeTaskConfiguration {

    @Bean
    Task<Void> noticeChecks(NoticeChecker checker) {
        return Tasks.recurring("notice-checks", FixedDelay.of(Duration.ofSeconds(1)))
                .execute((instance, context) ->
                        checker.checkPending(() -> context.getSchedulerState().isShuttingDown()));
    }

    @Bean
    Task<Void> workshopNotices(NoticeUpdater updater) {
        return Tasks.recurring("workshop-notices", FixedDelay.of(Duration.ofHours(1)))
                .execute((instance, context) -> updater.updateWorkshops());
    }
}
