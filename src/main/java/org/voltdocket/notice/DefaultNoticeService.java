package org.voltdocket.notice;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/** The notices for people. Their trail has a subject of its own, for a workshop reads the trail of its case. */
@Service
@Transactional
class DefaultNoticeService implements NoticeService {

    private static final int MOST_REASON = 2000;

    private final NoticeRepository store;
    private final Trail trail;
    private final Clock clock;

    DefaultNoticeService(NoticeRepository store, Trail trail, Clock clock) {
        this.store = store;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Notice> ofCase(Actor actor, UUID caseId) {
        requireDistributor(actor);
        return store.ofCase(caseId);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Notice> open(Actor actor, Optional<NoticeKind> kind, int limit) {
        requireDistributor(actor);
        return store.open(kind, limit);
    }

    @Override
    @Transactional(readOnly = true)
    public Map<String, Integer> openCounts(Actor actor, Collection<String> numbers) {
        return actor.isWorkshop() ? Map.of() : store.openCounts(numbers);
    }

    @Override
    public Notice lookedAt(Actor actor, UUID notice, String reason) {
        requireDistributor(actor);
        String text = reason == null ? "" : reason.strip();
        if (text.isEmpty() || text.length() > MOST_REASON || text.indexOf(0) >= 0) {
            throw RequestException.invalid(
                    "notice-refused",
                    "reason",
                    "'reason' states in 1 to " + MOST_REASON + " characters the result of the review");
        }
        Notice found = store.find(notice).orElseThrow(() -> new NotFoundException("such notice"));
        if (found.kind() == NoticeKind.DECISION_OBJECTED_TO) {
            throw RequestException.of(
                    409,
                    "notice-conflict",
                    "An objection is not reviewed here but answered on the page of the case, where the workshop reads the"
                            + " answer. Nothing was saved.");
        }
        if (!store.looked(notice, clock.instant().truncatedTo(ChronoUnit.MICROS), actor.user(), text)) {
            Notice.Looked earlier = store.find(notice).flatMap(Notice::looked).orElseThrow();
            throw RequestException.of(
                    409,
                    "notice-conflict",
                    earlier.by() + " reviewed it before: " + earlier.reason()
                            + " Nothing was saved; that review stays.");
        }
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("notice.kind", found.kind().id());
        details.put("notice.grounds", found.grounds());
        details.put("notice.reason", text);
        String subject =
                found.number().map(Object::toString).or(found::workshop).orElseThrow();
        trail.record(actor, "notice-looked-at", "notice/" + subject, details);
        return store.find(notice).orElseThrow();
    }

    private static void requireDistributor(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("notices are for the distributor");
        }
    }
}
