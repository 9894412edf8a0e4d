package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.PendingAssessments;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.evidence.DuplicateRecordingFoundEvent;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.comparison.CurveSimilarity.Vote;
import org.voltdocket.evidence.storage.EvidenceItemRepository;
import org.voltdocket.evidence.storage.RecordingLoader;
import org.voltdocket.kernel.Sha256;

/** Finds duplicate recordings with the index of landmarks in PostgreSQL. */
@Service
class DuplicateRecordingFinder implements DuplicateRecordings {

    private static final String TWINS = """
            select t.evidence_id, t.twin_id, o.case_id as twin_case_id, t.correlation, t.later_s, t.overlap_s
            from recording_twin t join evidence o on o.id = t.twin_id join evidence e on e.id = t.evidence_id
            """;
    private static final String ORDER = " order by t.evidence_id, t.correlation desc, t.twin_id";

    /** The search ends after this many candidates in a row without a match; the others have fewer common landmarks (ours). */
    private static final int MISSES = 8;

    private final CaseService cases;
    private final EvidenceItemRepository items;
    private final OutlineRepository outlines;
    private final RecordingLoader recordings;
    private final JdbcClient jdbc;
    private final PendingAssessments pending;
    private final ApplicationEventPublisher events;

    DuplicateRecordingFinder(
            CaseService cases,
            EvidenceItemRepository items,
            OutlineRepository outlines,
            RecordingLoader recordings,
            JdbcClient jdbc,
            PendingAssessments pending,
            ApplicationEventPublisher events) {
        this.cases = cases;
        this.items = items;
        this.outlines = outlines;
        this.recordings = recordings;
        this.jdbc = jdbc;
        this.pending = pending;
        this.events = events;
    }

    @Override
    public List<Twin> like(UUID evidenceId) {
        return jdbc.sql(TWINS + "where t.evidence_id = ?" + ORDER)
                .param(evidenceId)
                .query(Twin.class)
                .list();
    }

    @Override
    public List<Twin> ofCases(Set<UUID> caseIds) {
        return caseIds.isEmpty()
                ? List.of()
                : jdbc.sql(TWINS + "where e.case_id in (:cases)" + ORDER)
                        .param("cases", caseIds)
                        .query(Twin.class)
                        .list();
    }

    @Override
    public List<Sha256> copiedFromAnotherBattery(UUID caseId) {
        Set<Sha256> copies = new TreeSet<>();
        jdbc.sql("""
                        select e.sha256, o.case_id from recording_twin t
                        join evidence e on e.id = t.evidence_id join evidence o on o.id = t.twin_id
                        where e.case_id = ? and o.ordinal < e.ordinal""").param(caseId).query(row -> {
            if (!sameBattery(caseId, row.getObject(2, UUID.class))) {
                copies.add(new Sha256(row.getString(1)));
            }
        });
        return List.copyOf(copies);
    }

    private boolean sameBattery(UUID one, UUID other) {
        return cases.facts(one).ref().serial().equals(cases.facts(other).ref().serial());
    }

    @Override
    public List<UUID> casesToCompare() {
        return jdbc.sql("select distinct case_id from recording_to_compare order by case_id")
                .query(UUID.class)
                .list();
    }

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public Set<UUID> compare(UUID caseId) {
        oneAtATime();
        Set<UUID> found = new TreeSet<>();
        Map<UUID, Boolean> waiting = new TreeMap<>();
        jdbc.sql("select evidence_id, outlined from recording_to_compare where case_id = ? order by 1 for update")
                .param(caseId)
                .query(row -> {
                    waiting.put(row.getObject(1, UUID.class), row.getBoolean(2));
                });
        waiting.forEach((id, outlined) -> {
            EvidenceItem item = items.find(id).orElseThrow();
            if (!outlined) {
                Recording whole = recordings.of(List.of(item)).get(id);
                outlines.outline(id, whole);
            }
            twins(item).forEach(twin -> {
                keep(twin);
                found.add(twin.twinCaseId());
            });
            jdbc.sql("delete from recording_to_compare where evidence_id = ?")
                    .param(id)
                    .update();
        });
        if (!found.isEmpty()) {
            found.add(caseId);
        }
        found.forEach(each -> {
            pending.mark(each);
            events.publishEvent(new DuplicateRecordingFoundEvent(each));
        });
        return found;
    }

    /** Serialises comparisons: of two at the same time, neither would see the new recording of the other. */
    private void oneAtATime() {
        jdbc.sql("select 1 from pg_advisory_xact_lock(hashtextextended('recording twins', 0))")
                .query(Integer.class)
                .single();
    }

    private List<Twin> twins(EvidenceItem item) {
        Map<UUID, Twin> out = new TreeMap<>();
        Map<OutlineScale, VoltageOutline> own = outlines.outlines(item.id());
        int misses = 0;
        for (OutlineRepository.Votes votes : outlines.votes(item.id())) {
            if (misses == MISSES) {
                break;
            }
            EvidenceItem other = items.find(votes.other()).orElseThrow();
            if (other.caseId().equals(item.caseId())) {
                continue;
            }
            Optional<Twin> twin = likest(item, other, own, votes.byScale());
            twin.ifPresent(found -> out.put(other.id(), found));
            misses = twin.isPresent() ? 0 : misses + 1;
        }
        items.sameBytes(item.sha256()).stream()
                .filter(other -> !other.caseId().equals(item.caseId()))
                .forEach(other ->
                        out.put(other.id(), new Twin(item.id(), other.id(), other.caseId(), 1, 0, item.durationS())));
        return new ArrayList<>(out.values());
    }

    private Optional<Twin> likest(
            EvidenceItem item,
            EvidenceItem other,
            Map<OutlineScale, VoltageOutline> own,
            Map<OutlineScale, List<Vote>> votes) {
        if (!CurveSimilarity.worthALook(votes.values())) {
            return Optional.empty();
        }
        return outlines.outlines(other.id()).entrySet().stream()
                .flatMap(its ->
                        alike(item, other, own.get(its.getKey()), its.getValue(), votes.get(its.getKey())).stream())
                .max(Comparator.comparingDouble(Twin::correlation));
    }

    /** Compares both in the order of their digests, so that the order of arrival does not matter. */
    private static Optional<Twin> alike(
            EvidenceItem item, EvidenceItem other, VoltageOutline own, VoltageOutline its, List<Vote> votes) {
        if (own == null || votes == null) {
            return Optional.empty();
        }
        boolean first = item.sha256().compareTo(other.sha256()) < 0;
        return (first
                        ? CurveSimilarity.of(own, its, votes)
                        : CurveSimilarity.of(its, own, CurveSimilarity.turned(votes)))
                .map(like -> new Twin(
                        item.id(),
                        other.id(),
                        other.caseId(),
                        Math.min(1, like.correlation()),
                        first ? like.laterS() : -like.laterS(),
                        like.overlapS()));
    }

    private void keep(Twin twin) {
        insert(twin.evidenceId(), twin.twinId(), twin, twin.laterS());
        insert(twin.twinId(), twin.evidenceId(), twin, -twin.laterS());
    }

    private void insert(UUID one, UUID other, Twin twin, double laterS) {
        jdbc.sql("""
                        insert into recording_twin (evidence_id, twin_id, correlation, later_s, overlap_s)
                        values (?, ?, ?, ?, ?) on conflict do nothing""")
                .param(one)
                .param(other)
                .param(twin.correlation())
                .param(laterS)
                .param(twin.overlapS())
                .update();
    }
}
