package org.voltdocket.notice;

import java.time.Clock;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/**
 * Notices for the roles of the distributor. An actor with role {@code WORKSHOP} is refused. Their trail entries have a subject of
 * their own, because a workshop reads the trail of its case.
 */
@Service
@Transactional
public class NoticeService {

    private final NoticeRepository store;
    private final Trail trail;
    private final Clock clock;

    NoticeService(NoticeRepository store, Trail trail, Clock clock) {
        this.store = store;
        this.trail = trail;
        this.clock = clock;
    }

    /** The notices of a case and of its workshops, open ones first, then the newest. */
    @Transactional(readOnly = true)
    public List<Notice> ofCase(Actor actor, UUID caseId) {
        requireDistributor(actor);
        return store.ofCase(caseId);
    }

    /** The newest open notices, of one kind if one is given; at most {@code limit}. */
    @Transactional(readOnly = true)
    public List<Notice> open(Actor actor, Optional<NoticeKind> kind, int limit) {
        requireDistributor(actor);
        return store.open(kind, limit);
    }

    /**
     * The number of open notices by case number. Cases without open notices are absent; a workshop gets an empty map. One query.
     */
    @Transactional(readOnly = true)
    public Map<String, Integer> openCounts(Actor actor, Collection<String> numbers) {
        return actor.isWorkshop() ? Map.of() : store.openCounts(numbers);
    }

    /**
     * Records the review of a notice. The notice is not removed.
     *
     * @param reason the result of the review, 1 to 2000 characters
     * @throws RequestException if the reason is missing or too long, or the notice is reviewed already
     * @throws org.voltdocket.kernel.RequestException (404) if there is none
     */
    public Notice lookedAt(Actor actor, UUID notice, String reason) {
        requireDistributor(actor);
        String text = FreeText.required("notice-refused", "reason", reason, "states the result of the review");
        Notice found = store.find(notice).orElseThrow(() -> RequestException.notFound("such notice"));
        if (found.kind() == NoticeKind.DECISION_OBJECTED_TO) {
            throw RequestException.of(
                    409,
                    "notice-conflict",
                    "An objection is not reviewed but answered, on the page of the case, where the workshop reads the"
                            + " answer. Nothing was saved.");
        }
        if (!store.review(notice, clock.instant(), actor.user(), text)) {
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
