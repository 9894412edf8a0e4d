package org.voltdocket.dossier.web;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.dossier.bag.CaseBagExporter;
import org.voltdocket.dossier.report.CaseReport;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Writes the bag of a case with its JSON as the API returns it. */
@Component
class CaseBags {

    private final DossierService dossiers;
    private final CaseReport reports;
    private final CaseBagExporter bags;
    private final CaseResponseWriter answers;
    private final ClaimService claims;

    CaseBags(
            DossierService dossiers,
            CaseReport reports,
            CaseBagExporter bags,
            CaseResponseWriter answers,
            ClaimService claims) {
        this.dossiers = dossiers;
        this.reports = reports;
        this.bags = bags;
        this.answers = answers;
        this.claims = claims;
    }

    /**
     * The case, after its originals were read once.
     *
     * @throws IllegalStateException if stored bytes do not match their digest
     */
    Dossier check(Actor actor, CaseNumber number) {
        Dossier dossier = dossiers.of(actor, number);
        bags.check(dossier);
        return dossier;
    }

    /** Writes the bag and leaves the stream open. */
    void write(Actor actor, Dossier dossier, OutputStream out) throws IOException {
        List<CaseBagExporter.Earlier> earlier =
                claims.earlier(actor, dossier.file().ref().id(), dossier.claim()).stream()
                        .map(claim -> answers.earlier(dossier, claim))
                        .toList();
        bags.write(
                dossier, answers.body(dossier, null), answers.claim(dossier), earlier, reports.of(actor, dossier), out);
    }
}
