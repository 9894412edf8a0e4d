package org.voltdocket.insight;

import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Answers one topic. */
interface TopicAnalysis {

    Topic topic();

    TopicResult answer(InsightQuery question);

    /** Which lines of {@code insight_case} stand behind a key; empty where it is none of this topic's. */
    Optional<Lines> behind(InsightQuery question, String key);

    /**
     * A condition on {@code insight_case i} with its parameters.
     *
     * @param where names only parameters, never values
     */
    record Lines(String where, Map<String, Object> parameters) {

        /** Claims handed in within the question's days. */
        static Lines claimedWithin(InsightQuery question) {
            Map<String, Object> parameters = new LinkedHashMap<>();
            parameters.put("from", question.from().atStartOfDay().atOffset(ZoneOffset.UTC));
            parameters.put("to", question.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC));
            return new Lines("i.claimed_at >= :from and i.claimed_at < :to", parameters);
        }

        Lines and(String more) {
            return new Lines(where + " and " + more, parameters);
        }

        Lines and(String more, String name, Object value) {
            Map<String, Object> all = new LinkedHashMap<>(parameters);
            all.put(name, value);
            return new Lines(where + " and " + more, all);
        }
    }
}
