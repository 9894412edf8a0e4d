package org.voltdocket.assessment.rerun;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.BooleanSupplier;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Tasks of the scheduler: shares of a run, and a check every few seconds that each run has its shares. */
@Configuration(proxyBeanMethods = false)
class RunTaskConfiguration {

    private static final Duration TURN = Duration.ofSeconds(60);
    private static final Duration AGAIN = Duration.ofMillis(100);
    private static final Duration LATER = Duration.ofSeconds(5);

    /**
     * Works on a run for a turn. A node takes a limited number of shares at a time; the others are for other nodes.
     *
     * <p>A share holds one connection for its chunk and one more for the case at hand. Shares therefore use at
     * most a quarter of the pool, so that they never wait for each other.
     *
     * @param workers shares at a time on this node; 0 for one per processor
     * @param connections size of the connection pool
     */
    @Bean
    Task<Void> reassessmentShare(
            RunWorker work,
            @Value("${voltdocket.reassessment.workers:0}") int workers,
            @Value("${spring.datasource.hikari.maximum-pool-size:10}") int connections) {
        int wanted = workers > 0 ? workers : Runtime.getRuntime().availableProcessors();
        Semaphore free = new Semaphore(Math.max(1, Math.min(wanted, connections / 4)));
        return Tasks.custom(RunTasks.WORK)
                .onDeadExecutionRevive()
                .onFailure(new FailureHandler.OnFailureRetryLater<>(LATER))
                .execute((share, context) -> {
                    if (!free.tryAcquire()) {
                        return again(soon());
                    }
                    try {
                        boolean more = work.work(RunTasks.run(share.getId()), TURN, halting(context));
                        return more ? again(AGAIN) : new CompletionHandler.OnCompleteRemove<>();
                    } finally {
                        free.release();
                    }
                });
    }

    @Bean
    Task<Void> reassessmentWatch(RunRepository runs, RunTasks tasks) {
        return Tasks.recurring("reassessment-watch", FixedDelay.of(LATER))
                .execute((instance, context) -> runs.atWork().forEach(tasks::wake));
    }

    /** Random delay before a busy node tries a further share, so that another node can take it. */
    private static Duration soon() {
        return Duration.ofMillis(ThreadLocalRandom.current().nextLong(1000, 3000));
    }

    private static CompletionHandler<Void> again(Duration after) {
        return new CompletionHandler.OnCompleteReschedule<>(FixedDelay.of(after));
    }

    private static BooleanSupplier halting(ExecutionContext context) {
        return () -> context.getSchedulerState().isShuttingDown()
                || Thread.currentThread().isInterrupted();
    }
}
