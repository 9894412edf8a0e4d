package org.voltdocket.assessment.web;

import java.net.URI;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.evidence.AlreadyStored;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.IntakeResult;
import org.voltdocket.evidence.Rejected;
import org.voltdocket.evidence.Stored;
import org.voltdocket.kernel.Actor;

/** Responses about items of evidence. */
@Component
public class EvidenceResponses {

    private final CaseService cases;
    private final AssessmentService assessments;

    EvidenceResponses(CaseService cases, AssessmentService assessments) {
        this.cases = cases;
        this.assessments = assessments;
    }

    /** The response to an upload. */
    public ResponseEntity<EvidenceView> answer(Actor actor, IntakeResult received) {
        if (received instanceof Stored stored) {
            return ResponseEntity.created(
                            URI.create("/api/v1/evidence/" + stored.item().id()))
                    .body(view(actor, stored.item()));
        }
        if (received instanceof AlreadyStored known) {
            return ResponseEntity.ok(view(actor, known.item()));
        }
        throw ((Rejected) received).exception();
    }

    /** The item with its findings and regimes. */
    public EvidenceView view(Actor actor, EvidenceItem item) {
        CaseReference ref = cases.require(actor, item.caseId());
        return EvidenceView.of(
                ref.number().value(),
                item,
                assessments.findingsOf(ref.id(), item.id()),
                assessments.regimesOf(ref.id(), item.id()));
    }
}
