package org.voltdocket.notice;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionPhase;
import org.springframework.transaction.event.TransactionalEventListener;
import org.voltdocket.casefile.CaseOpenedEvent;
import org.voltdocket.casefile.FactsChangedEvent;
import org.voltdocket.claim.ClaimChangedEvent;
import org.voltdocket.evidence.DuplicateRecordingFoundEvent;
import org.voltdocket.evidence.EvidenceStoredEvent;

/**
 * Looks at changed cases in the background, one after the other: nobody waits for a comparison, and none can refuse an
 * upload. A case is noted as due in the transaction of its change, so that a crash loses none.
 */
@Component
class NoticeWorker {

    private static final Logger LOG = LoggerFactory.getLogger(NoticeWorker.class);
    private static final Duration BETWEEN_WORKSHOPS = Duration.ofHours(1);

    private final NoticeUpdater watch;
    private final PendingNoticeChecks due;
    private final Clock clock;
    private final AtomicBoolean called = new AtomicBoolean();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "notices");
        made.setDaemon(true);
        made.setPriority(Thread.MIN_PRIORITY);
        return made;
    });
    private volatile boolean stopping;
    private Instant workshopsLookedAt = Instant.MIN;

    NoticeWorker(NoticeUpdater watch, PendingNoticeChecks due, Clock clock) {
        this.watch = watch;
        this.due = due;
        this.clock = clock;
    }

    @EventListener
    void note(CaseOpenedEvent news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(FactsChangedEvent news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(EvidenceStoredEvent news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(DuplicateRecordingFoundEvent news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(ClaimChangedEvent news) {
        due.note(news.caseId());
    }

    @TransactionalEventListener(
            phase = TransactionPhase.AFTER_COMMIT,
            classes = {
                CaseOpenedEvent.class,
                FactsChangedEvent.class,
                EvidenceStoredEvent.class,
                DuplicateRecordingFoundEvent.class,
                ClaimChangedEvent.class
            })
    void changed() {
        call();
    }

    /** What a crash or a stop left. */
    @EventListener(ApplicationReadyEvent.class)
    void started() {
        call();
    }

    @EventListener(ContextClosedEvent.class)
    void closing() throws InterruptedException {
        stopping = true;
        thread.shutdown();
        thread.awaitTermination(10, TimeUnit.SECONDS);
    }

    /** Many changes make one call while the worker is busy. */
    private void call() {
        if (!stopping && called.compareAndSet(false, true)) {
            try {
                thread.execute(this::work);
            } catch (RejectedExecutionException e) {
                LOG.debug("The server stops; what is due is looked at when it starts again.");
            }
        }
    }

    private void work() {
        called.set(false);
        try {
            settle();
            if (!stopping && clock.instant().minus(BETWEEN_WORKSHOPS).isAfter(workshopsLookedAt)) {
                workshopsLookedAt = clock.instant();
                watch.lookAtWorkshops();
            }
        } catch (RuntimeException e) {
            if (!stopping) {
                LOG.warn("Looking for what is to be looked at failed; it goes on with the next change.", e);
            }
        }
    }

    /** Looks at all that is due. A case that fails stays due and is tried again at the next call. */
    synchronized void settle() {
        Set<UUID> failed = new HashSet<>();
        while (!stopping) {
            List<PendingNoticeChecks.Due> some = due.some().stream()
                    .filter(one -> !failed.contains(one.caseId()))
                    .toList();
            if (some.isEmpty()) {
                return;
            }
            for (PendingNoticeChecks.Due one : some) {
                if (stopping) {
                    return;
                }
                try {
                    watch.look(one);
                } catch (RuntimeException e) {
                    failed.add(one.caseId());
                    if (!stopping) {
                        LOG.warn("Case {} could not be looked at; it is tried again later.", one.caseId(), e);
                    }
                }
            }
        }
    }
}
