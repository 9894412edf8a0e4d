package org.voltdocket.evidence.intake;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.pending.PendingAssessments;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.EvidenceStoredEvent;
import org.voltdocket.evidence.comparison.OutlineRepository;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.evidence.storage.EvidenceItemRepository;
import org.voltdocket.evidence.storage.ReadingRepository;
import org.voltdocket.kernel.Actor;
import org.voltdocket.trail.Trail;

/** Writes one item of evidence with everything that belongs to it. */
@Component
class EvidenceWriter {

    private final OriginalFileStore originals;
    private final EvidenceItemRepository items;
    private final ReadingRepository readings;
    private final OutlineRepository outlines;
    private final PendingAssessments pending;
    private final Trail trail;
    private final ApplicationEventPublisher events;

    EvidenceWriter(
            OriginalFileStore originals,
            EvidenceItemRepository items,
            ReadingRepository readings,
            OutlineRepository outlines,
            PendingAssessments pending,
            Trail trail,
            ApplicationEventPublisher events) {
        this.originals = originals;
        this.items = items;
        this.readings = readings;
        this.outlines = outlines;
        this.pending = pending;
        this.trail = trail;
        this.events = events;
    }

    /**
     * Writes the original, the item and its reading, marks the case as pending assessment, and records it in the trail.
     *
     * @param reading null for a document
     * @return false if the case already has the same file; nothing was written then
     * @throws CaseFullException if the case has as much evidence as it may have; nothing was written then
     */
    @Transactional
    public boolean write(
            Actor actor,
            CaseReference file,
            EvidenceItem item,
            Reading reading,
            Path spool,
            OriginalFileStore.Place place) {
        originals.keep(item.sha256(), spool, item.bytes(), place);
        if (!items.add(item)) {
            return false;
        }
        if (reading != null) {
            readings.keep(item.id(), reading);
        }
        if (reading instanceof Recording recording) {
            outlines.keep(item.caseId(), item.id(), recording);
        }
        pending.mark(item.caseId()); // locks: what follows sees all files of the case
        items.overLimit(item.caseId()).ifPresent(why -> {
            throw new CaseFullException(why);
        });
        events.publishEvent(new EvidenceStoredEvent(item.caseId(), item.id()));
        trail.record(actor, "evidence-kept", file.number().value(), details(item));
        return true;
    }

    private static Map<String, Object> details(EvidenceItem item) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("fileName", item.fileName());
        details.put("bytes", item.bytes());
        details.put("sha256", item.sha256().hex());
        details.put("evidence", item.id().toString());
        details.put("kind", item.kind().id());
        details.put("origin", item.origin().id());
        return details;
    }

    /** A case would have more evidence than it may have. */
    static final class CaseFullException extends RuntimeException {

        private static final long serialVersionUID = 1L;

        CaseFullException(String why) {
            super(why);
        }
    }
}
