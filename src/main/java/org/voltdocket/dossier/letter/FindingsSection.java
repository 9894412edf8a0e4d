package org.voltdocket.dossier.letter;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Assessment.RankedCause;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.paper.PdfDocument;
import org.voltdocket.paper.TableCell;
import org.voltdocket.paper.TextStyle;
import org.voltdocket.ui.TextFormatter;

/** What was found, what it means and what to check in the vehicle, with the cautions for it. */
final class FindingsSection {

    /** Findings listed in a letter; the report lists all. */
    private static final int MOST = 5;
    /** Causes below this probability are not listed. */
    private static final double WORTH_NAMING = 0.1;

    private static final List<String> CARE = List.of("engine", "gas", "acid", "short", "damaged", "law");

    private final TextFormatter words;
    private final Assessment assessment;

    FindingsSection(TextFormatter words, Assessment assessment) {
        this.words = words;
        this.assessment = assessment;
    }

    void print(PdfDocument paper, int items) {
        paper.heading(words.say("letter.found"));
        paper.text(TableCell.of(assessment.said(), TextStyle.STRONG));
        List<String> said = telling();
        if (!said.isEmpty()) {
            paper.text(TableCell.of(words.say("letter.found.lead", items), TextStyle.BODY));
            paper.list(said, false);
        }
        paper.heading(words.say("letter.means"));
        paper.list(meaning(), false);
        if (!assessment.nextSteps().isEmpty()) {
            boolean battery = assessment.leaning() == Leaning.BATTERY_SIDE;
            paper.heading(words.say(battery ? "letter.check.battery" : "letter.check"));
            paper.list(assessment.nextSteps(), true);
        }
        List<TableCell> care = new ArrayList<>();
        care.add(TableCell.of(words.say("caution.title"), TextStyle.STRONG));
        CARE.forEach(id -> care.add(TableCell.of(words.of("caution", id), TextStyle.SMALL)));
        paper.caution(care);
    }

    /** The findings with the most weight for the first cause; if there are none, those outside their limits. */
    private List<String> telling() {
        Map<String, Finding> byId = new LinkedHashMap<>();
        assessment.findings().forEach(finding -> byId.put(finding.id(), finding));
        List<String> said = assessment.causes().get(0).weights().stream()
                .filter(weight -> weight.decibans() >= 1 && byId.containsKey(weight.finding()))
                .map(weight -> byId.get(weight.finding()).said())
                .distinct()
                .limit(MOST)
                .toList();
        return !said.isEmpty()
                ? said
                : assessment.findings().stream()
                        .filter(finding -> finding.result() == Result.OUTSIDE)
                        .map(Finding::said)
                        .distinct()
                        .limit(MOST)
                        .toList();
    }

    private List<String> meaning() {
        List<String> meaning = new ArrayList<>();
        String verdict = assessment.batteryVerdict().id();
        String reason = assessment.batteryReason().id();
        meaning.add(words.say(
                "letter.means.battery", words.of("verdict", verdict), words.of("battery-reason-means", reason)));
        meaning.add(words.say(
                "letter.means.leaning",
                words.of("leaning", assessment.leaning().id()),
                words.of("leaning-means", assessment.leaning().id())));
        for (RankedCause cause : assessment.causes()) {
            boolean first = cause == assessment.causes().get(0);
            if (first || cause.probability() >= WORTH_NAMING && cause.cause() != Cause.NONE) {
                String id = cause.cause().id();
                meaning.add(words.say(
                        first ? "letter.means.first" : "letter.means.other",
                        words.of("cause-name", id),
                        words.percent(cause.probability()),
                        words.of("cause-means", id)));
            }
        }
        return meaning;
    }
}
