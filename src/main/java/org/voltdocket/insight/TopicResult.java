package org.voltdocket.insight;

import java.util.List;
import java.util.Optional;
import org.voltdocket.insight.chart.Drawing;

/**
 * A topic's answer.
 *
 * @param said what is to be seen at once, each one sentence
 * @param drawing absent where there is nothing to draw
 */
public record TopicResult(
        Topic topic, InsightQuery question, List<Said> said, TopicTable table, Optional<Drawing> drawing) {

    /**
     * A sentence.
     *
     * @param code its message
     * @param key leads to the cases behind it
     */
    public record Said(String code, List<Object> arguments, Optional<String> key) {

        public static Said of(String code, Object... arguments) {
            return new Said(code, List.of(arguments), Optional.empty());
        }

        public Said leadingTo(String where) {
            return new Said(code, arguments, Optional.of(where));
        }
    }
}
