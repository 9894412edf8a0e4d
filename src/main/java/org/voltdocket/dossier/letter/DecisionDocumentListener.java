package org.voltdocket.dossier.letter;

import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.claim.decision.ClaimDecidedEvent;
import org.voltdocket.claim.repository.ClaimDocumentRepository;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.dossier.report.CaseReport;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;

/** Prints letter and report of a decision in the transaction that makes it, from the case as the workshop sees it. */
@Component
class DecisionDocumentListener {

    private final DossierService dossiers;
    private final CaseReport reports;
    private final DecisionLetter letters;
    private final ClaimDocumentRepository papers;

    DecisionDocumentListener(
            DossierService dossiers, CaseReport reports, DecisionLetter letters, ClaimDocumentRepository papers) {
        this.dossiers = dossiers;
        this.reports = reports;
        this.letters = letters;
        this.papers = papers;
    }

    @EventListener
    void print(ClaimDecidedEvent news) {
        Actor reader = new Actor("system", Role.WORKSHOP, Optional.of(news.workshop()));
        Dossier dossier = dossiers.of(reader, news.number());
        Sha256 report = papers.keep(news.claim(), DocumentKind.REPORT, reports.of(reader, dossier));
        papers.keep(news.claim(), DocumentKind.LETTER, letters.of(dossier, report));
    }
}
