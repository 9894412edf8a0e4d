package org.voltdocket.assessment;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionPhase;
import org.springframework.transaction.event.TransactionalEventListener;
import org.voltdocket.casefile.CaseOpened;
import org.voltdocket.casefile.Cases;
import org.voltdocket.casefile.FactsMended;
import org.voltdocket.evidence.EvidenceKept;

/**
 * Hears the news of the rooms below. Inside their transaction a case is noted as due; after it, and before the caller
 * goes on, it is assessed. A new case is history to those of the same battery or vehicle, so they are judged anew too.
 *
 * <p>The assessment starts when the caller's connection is given back; see {@link Afterwards}.
 */
@Component
class Listener {

    private final Due due;
    private final Assessor assessor;
    private final Cases cases;

    Listener(Due due, Assessor assessor, Cases cases) {
        this.due = due;
        this.assessor = assessor;
        this.cases = cases;
    }

    @EventListener
    void note(CaseOpened news) {
        due.note(news.caseId());
        cases.siblings(news.caseId()).forEach(due::note);
    }

    @EventListener
    void note(FactsMended news) {
        due.note(news.caseId());
    }

    @EventListener
    void note(EvidenceKept news) {
        due.note(news.caseId());
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(CaseOpened news) {
        Afterwards.run(() -> {
            assessor.assess(news.caseId());
            cases.siblings(news.caseId()).forEach(assessor::assessWithRoom);
        });
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(FactsMended news) {
        Afterwards.run(() -> assessor.assessWithRoom(news.caseId()));
    }

    @TransactionalEventListener(phase = TransactionPhase.AFTER_COMMIT)
    void assess(EvidenceKept news) {
        Afterwards.run(() -> assessor.assess(news.caseId()));
    }

    /** What a crash left between a change and its assessment, or what failed, is tried when the server starts. */
    @EventListener
    void assessLeftBehind(ApplicationReadyEvent started) {
        due.all().forEach(assessor::assessWithRoom);
    }
}
