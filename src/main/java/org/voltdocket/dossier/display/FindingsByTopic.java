package org.voltdocket.dossier.display;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.dossier.display.AssessmentDisplay.FindingRow;

/**
 * Findings in display order: those outside their limits or uncertain first, the others grouped by topic.
 *
 * @param notable outside first, then uncertain
 * @param inside of those inside, in the order of the topics; none is empty
 */
public record FindingsByTopic(List<FindingRow> notable, List<TopicFindings> inside) {

    /** Findings inside their limits on one topic. */
    public record TopicFindings(String topic, List<FindingRow> lines) {}

    public static FindingsByTopic of(List<FindingRow> lines) {
        Map<FindingTopic, List<FindingRow>> inside = new EnumMap<>(FindingTopic.class);
        lines.stream()
                .filter(line -> line.finding().result() == Result.INSIDE)
                .forEach(line -> inside.computeIfAbsent(topic(line), t -> new ArrayList<>())
                        .add(line));
        return new FindingsByTopic(
                lines.stream()
                        .filter(line -> line.finding().result() != Result.INSIDE)
                        .toList(),
                inside.entrySet().stream()
                        .map(e -> new TopicFindings(e.getKey().id(), List.copyOf(e.getValue())))
                        .toList());
    }

    private static FindingTopic topic(FindingRow line) {
        return FindingTopic.of(line.finding().quantity().replaceAll("/\\d+$", ""));
    }

    /** Whether there is nothing at all. */
    public boolean isEmpty() {
        return notable.isEmpty() && inside.isEmpty();
    }
}
