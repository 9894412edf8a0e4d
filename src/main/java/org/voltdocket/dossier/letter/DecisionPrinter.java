package org.voltdocket.dossier.letter;

import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.ClaimDecided;
import org.voltdocket.claim.ClaimPapers;
import org.voltdocket.claim.PaperKind;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.Dossiers;
import org.voltdocket.dossier.report.CaseReport;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;

/** Prints the papers of a decision in the transaction that makes it, as the workshop may see the case. */
@Component
class DecisionPrinter {

    private final Dossiers dossiers;
    private final CaseReport reports;
    private final DecisionLetter letters;
    private final ClaimPapers papers;

    DecisionPrinter(Dossiers dossiers, CaseReport reports, DecisionLetter letters, ClaimPapers papers) {
        this.dossiers = dossiers;
        this.reports = reports;
        this.letters = letters;
        this.papers = papers;
    }

    @EventListener
    void print(ClaimDecided news) {
        Actor reader = new Actor("system", Role.WORKSHOP, Optional.of(news.workshop()));
        Dossier dossier = dossiers.of(reader, news.number());
        Sha256 report = papers.keep(news.claim(), PaperKind.REPORT, reports.of(reader, dossier));
        papers.keep(news.claim(), PaperKind.LETTER, letters.of(dossier, report));
    }
}
