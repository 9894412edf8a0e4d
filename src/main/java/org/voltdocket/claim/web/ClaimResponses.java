package org.voltdocket.claim.web;

import java.net.URI;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Writes the latest claim of a case as an answer with the entity tag of the case. */
@Component
public class ClaimResponses {

    private final ClaimService claims;
    private final CaseService cases;
    private final AssessmentService assessments;
    private final EvidenceArchive archive;
    private final CaseEntityTags tags;

    ClaimResponses(
            ClaimService claims,
            CaseService cases,
            AssessmentService assessments,
            EvidenceArchive archive,
            CaseEntityTags tags) {
        this.claims = claims;
        this.cases = cases;
        this.assessments = assessments;
        this.archive = archive;
        this.tags = tags;
    }

    /** Status 200. */
    public ResponseEntity<ClaimView> ok(Actor actor, CaseNumber number) {
        return of(HttpStatus.OK, actor, number);
    }

    ResponseEntity<ClaimView> of(HttpStatus status, Actor actor, CaseNumber number) {
        UUID caseId = cases.require(actor, number).id();
        Claim claim = claims.latest(actor, number);
        ResponseEntity.BodyBuilder answer = ResponseEntity.status(status).eTag(tags.of(actor, number));
        if (status == HttpStatus.CREATED) {
            answer.location(URI.create("/api/v1/cases/" + number));
        }
        return answer.body(ClaimView.of(
                number, claim, claims.basisChange(claim, assessments.latest(caseId), archive.ofCase(caseId))));
    }
}
