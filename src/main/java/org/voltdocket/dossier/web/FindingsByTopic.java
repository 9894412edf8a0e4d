package org.voltdocket.dossier.web;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.dossier.web.AssessmentDisplay.FindingLine;

/**
 * Findings so that what speaks is seen first: what lies inside its limits is folded, a fold for each topic.
 *
 * @param speaking outside first, then uncertain
 * @param folds of those inside, in the order of the topics; none is empty
 */
public record FindingsByTopic(List<FindingLine> speaking, List<Fold> folds) {

    /** What lies inside its limits on one topic. */
    public record Fold(String topic, List<FindingLine> lines) {}

    static FindingsByTopic of(List<FindingLine> lines) {
        Map<FindingTopic, List<FindingLine>> inside = new EnumMap<>(FindingTopic.class);
        lines.stream()
                .filter(line -> line.finding().result() == Result.INSIDE)
                .forEach(line -> inside.computeIfAbsent(topic(line), t -> new ArrayList<>())
                        .add(line));
        return new FindingsByTopic(
                lines.stream()
                        .filter(line -> line.finding().result() != Result.INSIDE)
                        .toList(),
                inside.entrySet().stream()
                        .map(e -> new Fold(e.getKey().id(), List.copyOf(e.getValue())))
                        .toList());
    }

    private static FindingTopic topic(FindingLine line) {
        return FindingTopic.of(line.finding().quantity().replaceAll("/\\d+$", ""));
    }

    /** Whether there is nothing at all. */
    public boolean isEmpty() {
        return speaking.isEmpty() && folds.isEmpty();
    }
}
