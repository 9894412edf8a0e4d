package org.voltdocket.notice;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Notices for the roles of the distributor. An actor with role {@code WORKSHOP} is refused. */
public interface NoticeService {

    /** The notices of a case and of its workshops, open ones first, then the newest. */
    List<Notice> ofCase(Actor actor, UUID caseId);

    /** The newest open notices, of one kind if one is given; at most {@code limit}. */
    List<Notice> open(Actor actor, Optional<NoticeKind> kind, int limit);

    /**
     * The number of open notices by case number. Cases without open notices are absent; a workshop gets an empty map. One query.
     */
    Map<String, Integer> openCounts(Actor actor, Collection<String> numbers);

    /**
     * Records the review of a notice. The notice is not removed.
     *
     * @param reason the result of the review, 1 to 2000 characters
     * @throws RequestException if the reason is missing or too long, or the notice is reviewed already
     * @throws org.voltdocket.casefile.NotFoundException if there is none
     */
    Notice lookedAt(Actor actor, UUID notice, String reason);
}
