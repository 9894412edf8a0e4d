package org.voltdocket.insight;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;

/** Statistics over the archive, and the cases behind each number. Not for workshops. */
@Service
@Transactional(readOnly = true)
public class InsightService {

    /** Cases that are listed behind a number; the rest is counted. */
    public static final int LISTED = 500;

    private final Map<Topic, TopicAnalysis> analyses = new EnumMap<>(Topic.class);
    private final CaseSelectionRepository selections;

    InsightService(List<TopicAnalysis> analyses, CaseSelectionRepository selections) {
        analyses.forEach(analysis -> this.analyses.put(analysis.topic(), analysis));
        this.selections = selections;
    }

    /** @throws AccessDeniedException for a workshop */
    public TopicResult of(Actor actor, Topic topic, InsightQuery query) {
        distributor(actor);
        return analysis(topic).analyze(query);
    }

    /**
     * The cases behind a row or a sentence, newest first.
     *
     * @return empty where the topic has no such key
     * @throws AccessDeniedException for a workshop
     */
    public Optional<CaseSelection> cases(Actor actor, Topic topic, InsightQuery query, String key) {
        distributor(actor);
        return analysis(topic).filter(query, key).map(selections::find);
    }

    private TopicAnalysis analysis(Topic topic) {
        return Optional.ofNullable(analyses.get(topic)).orElseThrow();
    }

    private static void distributor(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("statistics are the distributor's");
        }
    }
}
