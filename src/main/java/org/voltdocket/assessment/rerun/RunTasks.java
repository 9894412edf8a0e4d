package org.voltdocket.assessment.rerun;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.time.Clock;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** Schedules runs as several shares, so that every node can take one. */
@Component
class RunTasks {

    static final TaskDescriptor<Void> WORK = TaskDescriptor.of("reassessment", Void.class);

    /** Shares per run; a share without work ends at once. */
    private static final int SHARES = 8;

    private final ObjectProvider<SchedulerClient> scheduler;
    private final Clock clock;

    RunTasks(ObjectProvider<SchedulerClient> scheduler, Clock clock) {
        this.scheduler = scheduler;
        this.clock = clock;
    }

    /** Schedules the missing shares of a run, in the caller's transaction if there is one. */
    void wake(UUID run) {
        for (int share = 0; share < SHARES; share++) {
            scheduler
                    .getObject()
                    .scheduleIfNotExists(WORK.instance(run + "/" + share).build(), clock.instant());
        }
    }

    static UUID run(String share) {
        return UUID.fromString(share.substring(0, share.indexOf('/')));
    }
}
