package org.voltdocket.insight;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;

/** Statistics over the archive, and the cases behind each number. For the distributor only. */
@Service
@Transactional(readOnly = true)
public class InsightService {

    /** Cases that are listed behind a number; the rest is counted. */
    public static final int LISTED = 500;

    private final Map<Topic, TopicAnalysis> studies = new EnumMap<>(Topic.class);
    private final CaseSelectionRepository behind;

    InsightService(List<TopicAnalysis> studies, CaseSelectionRepository behind) {
        studies.forEach(study -> this.studies.put(study.topic(), study));
        this.behind = behind;
    }

    /** @throws AccessDeniedException for a workshop */
    public TopicResult of(Actor actor, Topic topic, InsightQuery question) {
        distributor(actor);
        return study(topic).answer(question);
    }

    /**
     * The cases behind a row or a sentence, newest first.
     *
     * @return empty where the topic knows no such key
     * @throws AccessDeniedException for a workshop
     */
    public Optional<CaseSelection> behind(Actor actor, Topic topic, InsightQuery question, String key) {
        distributor(actor);
        return study(topic).behind(question, key).map(behind::cases);
    }

    private TopicAnalysis study(Topic topic) {
        return Optional.ofNullable(studies.get(topic)).orElseThrow();
    }

    private static void distributor(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("statistics are the distributor's");
        }
    }
}
