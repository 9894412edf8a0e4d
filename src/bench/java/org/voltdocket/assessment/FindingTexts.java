package org.voltdocket.assessment;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Corpus;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.write.AssessmentJson;

/**
 * Assessments of the sample cases as the server keeps them, cut down to so many findings and made into formats of PostgreSQL: 1 is
 * the evidence, 2 the leaning, 3 the probability of the first cause, and those after it the values of the findings.
 */
public final class FindingTexts {

    private static final Pattern VALUE = Pattern.compile("(\"value\":)-?[0-9][0-9.E-]*");

    private FindingTexts() {}

    /** The edition that judged them. */
    public static Rulebook edition() {
        return Editions.of("2026.1");
    }

    /** A text for each cause, by its identifier. */
    public static Map<String, String> byCause(int findings) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (Cause cause : Cause.values()) {
            texts.put(cause.id(), text(Diagnosis.assess(Corpus.input(cause.id()), edition()), findings));
        }
        return texts;
    }

    private static String text(Assessment whole, int most) {
        List<Assessment.Finding> kept = whole.findings().stream().limit(most).toList();
        if (kept.size() < most) {
            throw new IllegalStateException("a sample has only " + kept.size() + " findings");
        }
        Set<String> ids = kept.stream().map(Assessment.Finding::id).collect(Collectors.toSet());
        List<Assessment.RankedCause> causes = whole.causes().stream()
                .map(cause -> new Assessment.RankedCause(
                        cause.cause(),
                        cause.probability(),
                        cause.weights().stream().filter(weight -> ids.contains(weight.finding())).toList()))
                .toList();
        Assessment cut = new Assessment(
                whole.rulebook(), whole.batteryVerdict(), whole.batteryReason(), whole.leaning(), causes, kept, whole.estimates(), Map.of(), whole.said(),
                whole.nextSteps(), whole.missing());
        return format(AssessmentJson.of(cut, Instant.parse("2026-11-25T08:00:00Z")), kept, whole.leaning().id(), most);
    }

    private static String format(String body, List<Assessment.Finding> findings, String leaning, int most) {
        String text = body.replace("%", "%%");
        for (Assessment.Finding finding : findings) {
            if (finding.evidence() != null) {
                text = text.replace(finding.evidence(), "%1$s");
            }
        }
        text = text.replace("\"leaning\":\"" + leaning + "\"", "\"leaning\":\"%2$s\"")
                .replaceFirst("\"probability\":[0-9.E-]+", Matcher.quoteReplacement("\"probability\":%3$s"));
        Matcher values = VALUE.matcher(text);
        int from = text.indexOf("\"findings\":");
        StringBuilder made = new StringBuilder(text.substring(0, from));
        int at = from;
        for (int i = 0; i < most && values.find(at); i++) {
            made.append(text, at, values.start()).append(values.group(1)).append("%").append(4 + i).append("$s");
            at = values.end();
        }
        return made.append(text.substring(at)).toString();
    }
}
