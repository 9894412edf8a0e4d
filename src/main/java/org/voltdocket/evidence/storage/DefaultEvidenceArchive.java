package org.voltdocket.evidence.storage;

import java.io.OutputStream;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Reads evidence from PostgreSQL and, if there is one, from the object store. */
@Service
class DefaultEvidenceArchive implements EvidenceArchive {

    private final CaseService cases;
    private final EvidenceItemRepository items;
    private final OriginalFileStore raw;
    private final ReadingRepository readings;
    private final MemoryLimiter memory;

    DefaultEvidenceArchive(
            CaseService cases,
            EvidenceItemRepository items,
            OriginalFileStore raw,
            ReadingRepository readings,
            MemoryLimiter memory) {
        this.cases = cases;
        this.items = items;
        this.raw = raw;
        this.readings = readings;
        this.memory = memory;
    }

    @Override
    public EvidenceItem item(Actor actor, UUID evidenceId) {
        EvidenceItem item = find(evidenceId);
        try {
            cases.require(actor, item.caseId());
        } catch (RequestException e) {
            throw notVisible(evidenceId); // the same words as for one that is not there
        }
        return item;
    }

    @Override
    public List<EvidenceItem> ofCase(UUID caseId) {
        return items.ofCase(caseId);
    }

    @Override
    public Map<UUID, Integer> counts(Collection<UUID> caseIds) {
        return items.counts(caseIds);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Evidence> readings(UUID caseId) {
        List<EvidenceItem> all = items.ofCase(caseId);
        Map<UUID, Reading> read = readings.of(all);
        return all.stream()
                .filter(item -> read.containsKey(item.id()))
                .sorted(Comparator.comparing(EvidenceItem::sha256))
                .map(item -> new Evidence(item.id().toString(), item.sha256(), item.origin(), read.get(item.id())))
                .toList();
    }

    @Override
    public Set<UUID> erased(UUID caseId) {
        return items.erased(caseId);
    }

    @Override
    public <T> T withMemoryFor(UUID caseId, Supplier<T> work) {
        try (MemoryLimiter.Lease lease = memory.lease()) {
            lease.reserve(items.memoryOf(caseId));
            return work.get();
        }
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Reading> reading(UUID evidenceId) {
        return Optional.ofNullable(readings.of(List.of(find(evidenceId))).get(evidenceId));
    }

    @Override
    public void writeContent(UUID evidenceId, OutputStream to) {
        raw.write(find(evidenceId).sha256(), to);
    }

    private EvidenceItem find(UUID evidenceId) {
        return items.find(evidenceId).orElseThrow(() -> notVisible(evidenceId));
    }

    private static RequestException notVisible(UUID evidenceId) {
        return RequestException.notFound("evidence " + evidenceId);
    }
}
