package org.voltdocket.insight;

import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Computes one topic. */
public interface TopicAnalysis {

    Topic topic();

    TopicResult analyze(InsightQuery query);

    /** The cases behind a key; empty where the topic has no such key. */
    Optional<CaseFilter> filter(InsightQuery query, String key);

    /**
     * A condition on {@code insight_case i} with its parameters.
     *
     * @param where names only parameters, never values
     */
    record CaseFilter(String where, Map<String, Object> parameters) {

        /** Claims handed in within the question's days. */
        public static CaseFilter claimedWithin(InsightQuery query) {
            Map<String, Object> parameters = new LinkedHashMap<>();
            parameters.put("from", query.from().atStartOfDay().atOffset(ZoneOffset.UTC));
            parameters.put("to", query.to().plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC));
            return new CaseFilter("i.claimed_at >= :from and i.claimed_at < :to", parameters);
        }

        public CaseFilter and(String more) {
            return new CaseFilter(where + " and " + more, parameters);
        }

        public CaseFilter and(String more, String name, Object value) {
            Map<String, Object> all = new LinkedHashMap<>(parameters);
            all.put(name, value);
            return new CaseFilter(where + " and " + more, all);
        }
    }
}
