package org.voltdocket.notice;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** What a person should look at. Nothing here is for {@code WORKSHOP}: such an actor is refused. */
public interface NoticeService {

    /** Of a case and of its workshop, open ones first, then the newest. */
    List<Notice> ofCase(Actor actor, UUID caseId);

    /** The newest that wait for a person, of one kind where one is given; at most {@code limit}. */
    List<Notice> open(Actor actor, Optional<NoticeKind> kind, int limit);

    /**
     * How many of each of these cases wait for a person, by case number; a case without is left out, and a workshop gets
     * none. One query.
     */
    Map<String, Integer> openCounts(Actor actor, Collection<String> numbers);

    /**
     * Keeps that a person looked at it. It is not removed.
     *
     * @param reason what came of it, 1 to 2000 characters
     * @throws RequestException if the reason cannot be right, or somebody has looked at it before
     * @throws org.voltdocket.casefile.NotFoundException if there is none
     */
    Notice lookedAt(Actor actor, UUID notice, String reason);
}
