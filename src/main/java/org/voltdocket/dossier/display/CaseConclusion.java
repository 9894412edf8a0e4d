package org.voltdocket.dossier.display;

import java.util.List;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.Assessment;

/**
 * The first screen of a case: conclusion, next step, what is missing and one primary action.
 *
 * @param headline message code of the conclusion in a few words
 * @param nextStep the most useful next step; null where there is none
 * @param reason the finding with the most weight for the first cause; null where there is none
 * @param missing the first few items that would change the result
 * @param moreMissing how many more are missing
 * @param primary the action of the main button
 */
public record CaseConclusion(
        String headline, String nextStep, String reason, List<MissingItem> missing, int moreMissing, Action primary) {

    /** Items shown on the first screen. */
    private static final int MAX_MISSING = 3;

    /**
     * A test, recording or fact that would change the result.
     *
     * @param id such as {@code charging-test}
     * @param group message group of its name: {@code kind} or {@code fact}
     * @param href where to read how to take it, or where to enter it
     */
    public record MissingItem(String id, String group, String href) {

        static MissingItem of(String id, boolean evidence) {
            if (!evidence) {
                return new MissingItem(id, "fact", "#facts");
            }
            return new MissingItem(
                    id, "kind", (id.endsWith("recording") ? "/manual/recordings#" : "/manual/tests#") + id);
        }
    }

    /** A link within the page; {@code label} is a message code. */
    public record Action(String label, String href) {}

    /**
     * @param assessment null before the first
     * @param mayEdit whether the actor may add files and edit facts
     * @param decides whether the actor decides an existing claim of the case
     * @param isEvidence whether a missing item is a kind of evidence; others are facts
     */
    public static CaseConclusion of(
            Assessment assessment, boolean mayEdit, boolean decides, Predicate<String> isEvidence) {
        if (assessment == null) {
            Action first =
                    mayEdit ? new Action("upload.choose", "#upload") : new Action("answer.evidence", "#evidence");
            return new CaseConclusion("case.unjudged", null, null, List.of(), 0, first);
        }
        List<MissingItem> all = missing(assessment, isEvidence);
        return new CaseConclusion(
                "answer." + assessment.leaning().id(),
                assessment.nextSteps().isEmpty() ? null : assessment.nextSteps().get(0),
                reason(assessment),
                all.subList(0, Math.min(MAX_MISSING, all.size())),
                Math.max(0, all.size() - MAX_MISSING),
                primary(all, mayEdit, decides));
    }

    private static String reason(Assessment assessment) {
        return assessment.causes().get(0).weights().stream()
                .filter(weight -> weight.decibans() > 0)
                .flatMap(weight -> assessment.findings().stream()
                        .filter(finding -> finding.id().equals(weight.finding())))
                .map(Assessment.Finding::said)
                .findFirst()
                .orElse(null);
    }

    /** Every missing item, in the order of the assessment. */
    public static List<MissingItem> missing(Assessment assessment, Predicate<String> isEvidence) {
        return assessment.missing().stream()
                .map(id -> MissingItem.of(id, isEvidence.test(id)))
                .toList();
    }

    private static Action primary(List<MissingItem> missing, boolean mayEdit, boolean decides) {
        if (decides) {
            return new Action("answer.claim", "#claim");
        }
        if (mayEdit && missing.stream().anyMatch(item -> item.group().equals("kind"))) {
            return new Action("upload.choose", "#upload");
        }
        if (mayEdit && !missing.isEmpty()) {
            return new Action("facts.mend", "#facts");
        }
        return new Action("answer.steps", "#part-next");
    }
}
