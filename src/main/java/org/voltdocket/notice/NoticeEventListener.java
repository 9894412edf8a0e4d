package org.voltdocket.notice;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseOpenedEvent;
import org.voltdocket.casefile.FactsChangedEvent;
import org.voltdocket.claim.ClaimChangedEvent;
import org.voltdocket.evidence.DuplicateRecordingFoundEvent;
import org.voltdocket.evidence.EvidenceStoredEvent;

/** Notes each changed case for a check, in the transaction of the change. */
@Component
class NoticeEventListener {

    private final PendingNoticeChecks pending;

    NoticeEventListener(PendingNoticeChecks pending) {
        this.pending = pending;
    }

    @EventListener
    void caseOpened(CaseOpenedEvent event) {
        pending.note(event.caseId());
    }

    @EventListener
    void factsChanged(FactsChangedEvent event) {
        pending.note(event.caseId());
    }

    @EventListener
    void evidenceStored(EvidenceStoredEvent event) {
        pending.note(event.caseId());
    }

    @EventListener
    void duplicateRecordingFound(DuplicateRecordingFoundEvent event) {
        pending.note(event.caseId());
    }

    @EventListener
    void claimChanged(ClaimChangedEvent event) {
        pending.note(event.caseId());
    }
}
