package org.voltdocket.claim.decision;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimDecision;
import org.voltdocket.claim.DecisionProposal;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.claim.repository.ClaimDocumentRepository;
import org.voltdocket.claim.repository.ClaimRepository;
import org.voltdocket.claim.repository.ClaimWarranty;
import org.voltdocket.claim.repository.DecisionProposalRepository;
import org.voltdocket.claim.repository.DecisionRepository;
import org.voltdocket.claim.repository.LocatedClaim;
import org.voltdocket.kernel.Sha256;

/** Stores a decision with its warranty calculation and its documents, or proposes it to a second person. */
@Component
public class DecisionRecorder {

    private final DecisionProposalRepository proposals;
    private final DecisionRepository decisions;
    private final ClaimWarranty warranty;
    private final ClaimDocumentRepository documents;
    private final ApplicationEventPublisher events;

    DecisionRecorder(
            DecisionProposalRepository proposals,
            DecisionRepository decisions,
            ClaimWarranty warranty,
            ClaimDocumentRepository documents,
            ApplicationEventPublisher events) {
        this.proposals = proposals;
        this.decisions = decisions;
        this.warranty = warranty;
        this.documents = documents;
        this.events = events;
    }

    /**
     * Stores the decision of a step that is stored already.
     *
     * @return the digests of the documents for the trail; empty for a proposal
     */
    public Map<String, Object> record(LocatedClaim claim, ClaimDecision decision) {
        ClaimRepository.Row row = claim.row();
        long version = row.version() + 1;
        if (decision.needsSecondPerson()) {
            proposals.keep(
                    row.id(),
                    version,
                    DecisionProposal.of(decision, decision.limit().orElseThrow()));
            return Map.of();
        }
        decisions.keep(row.id(), version, decision);
        warranty.freeze(row);
        // before the trail entry, which names the documents and holds the lock of the trail
        events.publishEvent(new ClaimDecidedEvent(row.id(), claim.caseFile().number(), row.workshop()));
        return printedDigests(row);
    }

    private Map<String, Object> printedDigests(ClaimRepository.Row row) {
        Map<DocumentKind, Sha256> printed = documents.digests(row.id());
        Map<String, Object> digests = new LinkedHashMap<>();
        for (DocumentKind kind : DocumentKind.values()) {
            if (!printed.containsKey(kind)) {
                throw new IllegalStateException("the decision has no " + kind.id());
            }
            digests.put("claim." + kind.id(), printed.get(kind).hex());
        }
        return digests;
    }
}
