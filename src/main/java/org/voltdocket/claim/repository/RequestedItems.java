package org.voltdocket.claim.repository;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStep;
import org.voltdocket.claim.RequestableItem;
import org.voltdocket.claim.RequestedItem;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;

/** Matches the items of the latest evidence request with the evidence, the facts and the answers that came since. */
@Component
public class RequestedItems {

    private final EvidenceRequestRepository answers;
    private final EvidenceArchive archive;
    private final CaseService cases;

    RequestedItems(EvidenceRequestRepository answers, EvidenceArchive archive, CaseService cases) {
        this.answers = answers;
        this.archive = archive;
        this.cases = cases;
    }

    /** The items of the latest request; empty if nothing was requested yet. */
    List<RequestedItem> of(UUID claimId, UUID caseId, List<ClaimStep> steps) {
        return latestRequest(steps)
                .map(request -> match(
                        request,
                        answers.answers(claimId, request),
                        archive.ofCase(caseId),
                        FactFields.values(cases.facts(caseId).facts()).keySet()))
                .orElse(List.of());
    }

    public static Optional<ClaimStep> latestRequest(List<ClaimStep> steps) {
        return steps.stream().filter(step -> step.action() == ClaimAction.ASK).reduce((earlier, later) -> later);
    }

    /**
     * @param evidence of the case, oldest first
     * @param facts names of the facts that are known
     */
    static List<RequestedItem> match(
            ClaimStep request, List<RequestedItemAnswer> answers, List<EvidenceItem> evidence, Set<String> facts) {
        List<RequestedItem> items = new ArrayList<>();
        for (int i = 0; i < request.items().size(); i++) {
            int position = i + 1;
            items.add(item(
                    position,
                    request,
                    answers.stream()
                            .filter(answer -> answer.position() == position)
                            .toList(),
                    evidence,
                    facts));
        }
        return items;
    }

    private static RequestedItem item(
            int position,
            ClaimStep request,
            List<RequestedItemAnswer> answers,
            List<EvidenceItem> evidence,
            Set<String> facts) {
        String name = request.items().get(position - 1);
        boolean known = RequestableItem.ALL.contains(name);
        Set<UUID> sent = new LinkedHashSet<>();
        answers.forEach(answer -> answer.evidence().ifPresent(sent::add));
        List<String> words = answers.stream()
                .map(RequestedItemAnswer::words)
                .filter(text -> text != null)
                .toList();
        Set<UUID> matching = new LinkedHashSet<>();
        for (EvidenceItem item : evidence) {
            boolean ofKind = item.kind().id().equals(name);
            boolean later = item.receivedAt().isAfter(request.at());
            if (sent.contains(item.id()) ? ofKind || !known : ofKind && later) {
                matching.add(item.id());
            }
        }
        sent.addAll(matching);
        boolean answered = !matching.isEmpty() || !words.isEmpty() || facts.contains(name);
        return new RequestedItem(
                position, known ? name : null, known ? null : name, answered, List.copyOf(sent), words);
    }
}
