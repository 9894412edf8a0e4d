package org.voltdocket.dossier.web;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.dossier.DecisionBasisText;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.ui.TextFormatter;

/**
 * The claim as the page of a case shows it.
 *
 * @param latest null where the case has none that the actor may see
 * @param workshop whose claim it is; null where that is no longer known
 * @param mayOpen whether the actor may open one now
 * @param plain steps that need nothing but a click
 * @param decisions steps that decide
 * @param seconds what the actor may do as the second person
 * @param mayAsk whether the actor may ask for evidence
 * @param missing what the assessment names as missing
 * @param others what else can be asked for
 * @param mayAnswer whether the actor may give something to what is asked for
 * @param earlier the other claims of the case that the actor may see, oldest first
 * @param mayObject whether the actor may object to the decision now
 * @param mayAnswerObjection whether the actor may answer an objection
 * @param held the evidence of the case, by id
 * @param assessment id of the latest assessment; null before the first
 * @param basisChange how the case differs from what the claim was decided on, in lines; empty where it does not
 */
record ClaimPanel(
        Claim latest,
        String workshop,
        boolean mayOpen,
        List<ClaimAction> plain,
        List<ClaimAction> decisions,
        List<ClaimAction> seconds,
        boolean mayAsk,
        List<String> missing,
        List<String> others,
        boolean mayAnswer,
        Map<UUID, EvidenceItem> held,
        UUID assessment,
        List<String> basisChange,
        List<Claim> earlier,
        boolean mayObject,
        boolean mayAnswerObjection) {

    /** The step that asked last; null where none did. */
    public ClaimStep ask() {
        return latest.steps().stream()
                .filter(step -> step.action() == ClaimAction.ASK)
                .reduce((earlier, later) -> later)
                .orElse(null);
    }

    /** How many of the things asked for are answered. */
    public long answered() {
        return latest.requestedItems().stream().filter(RequestedItem::answered).count();
    }

    static ClaimPanel of(Actor actor, Dossier dossier, List<Claim> earlier, List<String> askable, TextFormatter words) {
        Claim claim = dossier.claim().orElse(null);
        List<ClaimAction> allowed = claim == null ? List.of() : claim.allowed();
        UUID assessment = dossier.assessment().map(StoredAssessment::id).orElse(null);
        Set<String> missing = new LinkedHashSet<>(
                dossier.assessment().map(kept -> kept.assessment().missing()).orElse(List.of()));
        missing.retainAll(askable);
        return new ClaimPanel(
                claim,
                claim == null ? null : dossier.workshopNames().get(claim.workshop()),
                actor.isWorkshop() && (claim == null || claim.state().isEnd()),
                allowed.stream()
                        .filter(action -> !action.decides() && !action.seconds() && action != ClaimAction.ASK)
                        .toList(),
                allowed.stream().filter(ClaimAction::decides).toList(),
                allowed.stream().filter(ClaimAction::seconds).toList(),
                allowed.contains(ClaimAction.ASK),
                List.copyOf(missing),
                askable.stream().filter(item -> !missing.contains(item)).toList(),
                allowed.contains(ClaimAction.ANSWER),
                dossier.evidence().stream().collect(Collectors.toMap(EvidenceItem::id, item -> item)),
                assessment,
                dossier.basisChange()
                        .map(other -> new DecisionBasisText(words, dossier).lines(other))
                        .orElse(List.of()),
                earlier,
                actor.isWorkshop()
                        && claim != null
                        && claim.decision().isPresent()
                        && claim.openObjection().isEmpty(),
                actor.canDecideClaims());
    }
}
