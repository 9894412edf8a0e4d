package org.voltdocket.notice;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * Checks changed cases for notices in the background: nobody waits for a comparison, and none can refuse an upload. A case stays
 * pending until it is checked, so that a crash loses none.
 */
@Component
class NoticeChecker {

    private static final Logger LOG = LoggerFactory.getLogger(NoticeChecker.class);

    private final NoticeUpdater updater;
    private final PendingNoticeChecks pending;

    NoticeChecker(NoticeUpdater updater, PendingNoticeChecks pending) {
        this.updater = updater;
        this.pending = pending;
    }

    /**
     * Checks all pending cases. A case that fails stays pending and is checked again at the next call.
     *
     * @param stopping whether to stop before the next case
     */
    synchronized void checkPending(BooleanSupplier stopping) {
        Set<UUID> failed = new HashSet<>();
        List<PendingNoticeChecks.Due> batch = next(failed);
        while (!batch.isEmpty()) {
            for (PendingNoticeChecks.Due one : batch) {
                if (stopping.getAsBoolean()) {
                    return;
                }
                try {
                    updater.update(one);
                } catch (RuntimeException e) {
                    failed.add(one.caseId());
                    LOG.warn("Case {} could not be checked for notices; it is checked again later.", one.caseId(), e);
                }
            }
            batch = next(failed);
        }
    }

    private List<PendingNoticeChecks.Due> next(Set<UUID> failed) {
        return pending.some().stream()
                .filter(one -> !failed.contains(one.caseId()))
                .toList();
    }
}
