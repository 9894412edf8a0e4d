package org.voltdocket.diagnosis.write;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.voltdocket.diagnosis.Assessment;

/** An assessment as text for a terminal: verdict, causes, findings, next steps and what is missing. */
public final class AssessmentText {

    /** Causes that are less probable are left out. */
    private static final double LEAST_PROBABILITY = 0.005;

    private AssessmentText() {}

    /** The assessment in lines that end with {@code \n}. */
    public static String of(Assessment assessment) {
        StringBuilder text = new StringBuilder();
        text.append(assessment.said()).append("\n\n");
        text.append(String.format(
                "%-10s %s\n",
                "battery",
                assessment.batteryVerdict().id() + ", "
                        + assessment.batteryReason().id()));
        text.append(String.format("%-10s %s\n", "leaning", assessment.leaning().id()));
        text.append(String.format("%-10s %s\n", "rule book", assessment.rulebook()));
        list(
                text,
                "Causes",
                assessment.causes().stream()
                        .filter(cause -> cause.probability() >= LEAST_PROBABILITY)
                        .toList(),
                cause -> String.format(
                        Locale.ROOT,
                        "%5.1f %%  %s",
                        100 * cause.probability(),
                        cause.cause().id()));
        list(text, "Findings", assessment.findings(), AssessmentText::finding);
        list(text, "Next steps", assessment.nextSteps(), step -> step);
        list(text, "Missing", assessment.missing(), item -> item);
        return text.toString();
    }

    private static String finding(Assessment.Finding finding) {
        return String.format("%-9s  %s", finding.result().id(), finding.said());
    }

    private static <T> void list(StringBuilder text, String title, List<T> items, Function<T, String> line) {
        if (!items.isEmpty()) {
            text.append('\n').append(title).append('\n');
            items.forEach(item -> text.append("  ").append(line.apply(item)).append('\n'));
        }
    }
}
