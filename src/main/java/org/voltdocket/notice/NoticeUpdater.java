package org.voltdocket.notice;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseService;

/** Runs every finder on a case and stores the difference to its current notices. */
@Component
class NoticeUpdater {

    /** Largest number of related cases that are checked again too. */
    private static final int MOST_SPREAD = 50;

    private final List<NoticeFinder> finders;
    private final WorkshopComparison workshops;
    private final NoticeRepository store;
    private final PendingNoticeChecks due;
    private final CaseService cases;
    private final TransactionTemplate transaction;
    private final Clock clock;

    NoticeUpdater(
            List<NoticeFinder> finders,
            WorkshopComparison workshops,
            NoticeRepository store,
            PendingNoticeChecks due,
            CaseService cases,
            TransactionTemplate transaction,
            Clock clock) {
        this.finders = finders;
        this.workshops = workshops;
        this.store = store;
        this.due = due;
        this.cases = cases;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Updates the notices of one case. Finding takes time and no lock; storing is one short transaction. */
    void update(PendingNoticeChecks.Due one) {
        CaseFacts file = cases.facts(one.caseId());
        List<FinderResult> found = new ArrayList<>();
        finders.forEach(finder -> found.addAll(finder.find(file)));
        transaction.executeWithoutResult(status -> {
            List<UUID> gone = keep(one.caseId(), true, found);
            // always in this order, so that no two transactions wait for each other
            Set<UUID> touched = new TreeSet<>(Set.of(one.caseId()));
            if (one.spread()) {
                found.stream()
                        .flatMap(each -> each.others().stream())
                        .map(FinderResult.Other::id)
                        .distinct()
                        .limit(MOST_SPREAD)
                        .forEach(touched::add);
                gone.forEach(notice -> touched.addAll(due.others(notice)));
            }
            for (UUID each : touched) {
                if (each.equals(one.caseId())) {
                    due.done(one);
                } else {
                    due.noteQuietly(each);
                }
            }
        });
    }

    /** Compares every workshop with all others. */
    void updateWorkshops() {
        Map<UUID, List<FinderResult>> found = workshops.find();
        transaction.executeWithoutResult(status -> found.forEach((workshop, each) -> keep(workshop, false, each)));
    }

    /** @return notices that ended */
    private List<UUID> keep(UUID subject, boolean ofCase, List<FinderResult> found) {
        Instant at = clock.instant();
        List<NoticeRepository.Current> current = store.current(subject);
        Set<FinderResult> known = found.stream()
                .filter(each -> current.stream().anyMatch(one -> one.equalsResult(each)))
                .collect(Collectors.toSet());
        List<UUID> gone = current.stream()
                .filter(one -> found.stream().noneMatch(one::equalsResult))
                .map(NoticeRepository.Current::id)
                .toList();
        gone.forEach(notice -> store.end(notice, at));
        found.stream()
                .filter(each -> !known.contains(each))
                .distinct()
                .forEach(each -> store.add(subject, ofCase, each, at));
        return gone;
    }
}
