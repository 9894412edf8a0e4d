package org.voltdocket.insight;

import java.util.List;
import java.util.Optional;
import org.voltdocket.insight.chart.Drawing;

/**
 * The result of a topic.
 *
 * @param statements the main results, one sentence each
 * @param drawing empty where there is nothing to draw
 */
public record TopicResult(
        Topic topic, InsightQuery query, List<Statement> statements, TopicTable table, Optional<Drawing> drawing) {

    /**
     * A sentence.
     *
     * @param code its message
     * @param key identifies the cases behind it
     */
    public record Statement(String code, List<Object> arguments, Optional<String> key) {

        public static Statement of(String code, Object... arguments) {
            return new Statement(code, List.of(arguments), Optional.empty());
        }

        public Statement withKey(String where) {
            return new Statement(code, arguments, Optional.of(where));
        }
    }
}
