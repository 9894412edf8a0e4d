package org.voltdocket.dossier.upload;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Deletes expired uploads every hour. */
@Configuration(proxyBeanMethods = false)
class ResumableUploadTasks {

    @Bean
    Task<Void> expiredUploadsTask(ResumableUploadService uploads) {
        return Tasks.recurring("expired-uploads", FixedDelay.of(Duration.ofHours(1)))
                .execute((instance, context) -> uploads.deleteExpired());
    }
}
