package org.voltdocket.dossier.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.CurrentEdition;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.rulebook.DiagnosticTest;
import org.voltdocket.ui.TextFormatter;

/**
 * The tests worth doing for a case, most informative first. While a case has no evidence, the complaint gives the order; after
 * that the expected value of each test, as the assessment lists what is missing.
 */
@Component
class TestGuide {

    /** Tests shown at once. */
    private static final int FEW = 3;

    private final CurrentEdition edition;
    private final TextFormatter words;

    TestGuide(CurrentEdition edition, TextFormatter words) {
        this.edition = edition;
        this.words = words;
    }

    /**
     * One test.
     *
     * @param minutes working time by the rule book; null where it says nothing
     * @param meaning what each result would mean; null where that is not known
     * @param hasForm whether its values can be typed; others are recordings
     * @param done whether the case has one already
     */
    public record Step(EvidenceKind kind, Long minutes, String meaning, boolean hasForm, boolean done) {}

    /**
     * The guide of a case.
     *
     * @param complaint null where it is none of the usual ones
     * @param facts names of facts on the label that would change the verdict
     * @param steps the few tests that are worth most, most informative first
     * @param further other tests that are left
     * @param done tests that the case has and that need no repetition
     * @param checks other next steps of the assessment, such as a check of the vehicle
     */
    public record Guide(
            Complaint complaint,
            List<String> facts,
            List<Step> steps,
            List<Step> further,
            List<Step> done,
            List<String> checks) {}

    Guide of(Assessment assessment, Set<EvidenceKind> present, String complaint) {
        Optional<Complaint> told = Complaint.of(complaint, words);
        List<String> missing = assessment == null ? List.of() : assessment.missing();
        List<String> next = assessment == null ? List.of() : assessment.nextSteps();
        Set<EvidenceKind> wanted = new LinkedHashSet<>();
        List<EvidenceKind> usual = told.map(Complaint::tests).orElse(Complaint.USUAL);
        if (present.isEmpty()) {
            wanted.addAll(usual);
        }
        missing.stream().filter(id -> !id.contains(".")).map(EvidenceKind::of).forEach(wanted::add);
        if (present.isEmpty() || told.isPresent()) {
            usual.stream().filter(kind -> !present.contains(kind)).forEach(wanted::add);
        }
        List<Step> steps = wanted.stream().map(kind -> step(kind, next, false)).toList();
        List<Step> done = Arrays.stream(EvidenceKind.values())
                .filter(kind -> present.contains(kind) && !wanted.contains(kind) && kind != EvidenceKind.DOCUMENT)
                .map(kind -> step(kind, next, true))
                .toList();
        List<String> facts = missing.stream()
                .filter(id -> id.contains(".") && next.contains(words.say("missing." + id)))
                .toList();
        int few = Math.min(FEW, steps.size());
        return new Guide(
                told.orElse(null), facts, steps.subList(0, few), steps.subList(few, steps.size()), done, checks(next));
    }

    private Step step(EvidenceKind kind, List<String> next, boolean done) {
        DiagnosticTest test = edition.rulebook().tests().get(kind);
        String lead = words.say("missing." + kind.id()) + " ";
        String meaning = next.stream()
                .filter(sentence -> sentence.startsWith(lead))
                .map(sentence -> sentence.substring(lead.length()))
                .findFirst()
                .orElse(null);
        return new Step(
                kind,
                test == null ? null : Math.round(test.minutes()),
                meaning,
                TestForm.of(kind).isPresent(),
                done);
    }

    /** Next steps that are neither a test nor a fact of the guide. */
    private List<String> checks(List<String> next) {
        Set<String> leads = Arrays.stream(EvidenceKind.values())
                .filter(kind -> words.knows("missing", kind.id()))
                .map(kind -> words.say("missing." + kind.id()))
                .collect(Collectors.toSet());
        List<String> checks = new ArrayList<>(next);
        checks.removeIf(sentence -> leads.stream().anyMatch(sentence::startsWith));
        checks.removeIf(sentence -> sentence.startsWith(words.say("missing.facts")) || isFact(sentence));
        return List.copyOf(checks);
    }

    private boolean isFact(String sentence) {
        return FactFields.ALL.stream()
                .map(FactFields.Field::name)
                .anyMatch(name -> words.of("missing", name).equals(sentence));
    }
}
