package org.voltdocket.dossier.web;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimView;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Writes claims as answers, with the entity tag of their case. */
@Component
class ClaimAnswers {

    private final DossierService dossiers;
    private final CaseResponseWriter answers;

    ClaimAnswers(DossierService dossiers, CaseResponseWriter answers) {
        this.dossiers = dossiers;
        this.answers = answers;
    }

    ResponseEntity<ClaimView> ok(Actor actor, CaseNumber number) {
        return answer(HttpStatus.OK, actor, number);
    }

    ResponseEntity<ClaimView> answer(HttpStatus status, Actor actor, CaseNumber number) {
        Dossier dossier = dossiers.of(actor, number);
        ResponseEntity.BodyBuilder answer = ResponseEntity.status(status).eTag(answers.tag(dossier));
        if (status == HttpStatus.CREATED) {
            answer.location(CaseResponseWriter.address(number));
        }
        return answer.body(ClaimView.of(number, dossier.claim().orElseThrow(), dossier.otherGrounds()));
    }
}
