package org.voltdocket.desk;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The scheduler's task that merges the claim counts, on one node at a time. */
@Configuration(proxyBeanMethods = false)
class DeskTaskConfiguration {

    @Bean
    Task<Void> claimCountMerge(ClaimCounts counts) {
        return Tasks.recurring("claim-count-merge", FixedDelay.of(Duration.ofSeconds(20)))
                .execute((instance, context) -> counts.mergeIfMany());
    }
}
