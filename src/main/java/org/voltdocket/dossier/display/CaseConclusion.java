package org.voltdocket.dossier.display;

import java.util.List;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.kernel.CaseNumber;

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

        /** @param guide page that leads through the tests; null for a person who enters none */
        static MissingItem of(String id, boolean evidence, String guide) {
            if (!evidence) {
                return new MissingItem(id, "fact", "#facts");
            }
            boolean recording = id.endsWith("recording");
            String manual = (recording ? "/manual/recordings#" : "/manual/tests#") + id;
            return new MissingItem(id, "kind", guide == null ? manual : recording ? guide : guide + "/" + id);
        }
    }

    /** A link within the page or the server; {@code label} is a message code. */
    public record Action(String label, String href) {}

    /**
     * @param number of the case
     * @param assessment null before the first
     * @param mayEdit whether the actor may add files and edit facts
     * @param decides whether the actor decides an existing claim of the case
     * @param isEvidence whether a missing item is a kind of evidence; others are facts
     */
    public static CaseConclusion of(
            CaseNumber number, Assessment assessment, boolean mayEdit, boolean decides, Predicate<String> isEvidence) {
        String tests = mayEdit ? tests(number) : null;
        Action guide = new Action("answer.how", tests);
        if (assessment == null) {
            Action first = mayEdit ? guide : new Action("answer.evidence", "#evidence");
            return new CaseConclusion("case.unjudged", null, null, List.of(), 0, first);
        }
        List<MissingItem> all = missing(tests, assessment, isEvidence);
        return new CaseConclusion(
                "answer." + assessment.leaning().id(),
                assessment.nextSteps().isEmpty() ? null : assessment.nextSteps().get(0),
                reason(assessment),
                all.subList(0, Math.min(MAX_MISSING, all.size())),
                Math.max(0, all.size() - MAX_MISSING),
                primary(guide, assessment, mayEdit, decides));
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

    /** Address of the page that leads through the tests of a case. */
    private static String tests(CaseNumber number) {
        return "/cases/" + number + "/tests";
    }

    /** Every missing item, in the order of the assessment, with a link to its form for a person who may edit. */
    public static List<MissingItem> missing(
            CaseNumber number, Assessment assessment, boolean mayEdit, Predicate<String> isEvidence) {
        return missing(mayEdit ? tests(number) : null, assessment, isEvidence);
    }

    private static List<MissingItem> missing(String tests, Assessment assessment, Predicate<String> isEvidence) {
        return assessment.missing().stream()
                .map(id -> MissingItem.of(id, isEvidence.test(id), tests))
                .toList();
    }

    private static Action primary(Action guide, Assessment assessment, boolean mayEdit, boolean decides) {
        if (decides) {
            return new Action("answer.claim", "#claim");
        }
        boolean open =
                !assessment.missing().isEmpty() || !assessment.nextSteps().isEmpty();
        return mayEdit && open ? guide : new Action("answer.steps", "#part-next");
    }
}
