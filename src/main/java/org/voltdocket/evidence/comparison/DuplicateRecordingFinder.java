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
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.pending.PendingAssessments;
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

    /** The search ends after this many candidates in a row without a match; the others have fewer common landmarks (ours). */
    private static final int MISSES = 8;

    private final CaseService cases;
    private final EvidenceItemRepository items;
    private final OutlineRepository outlines;
    private final RecordingLoader recordings;
    private final DuplicateRecordingRepository matches;
    private final PendingAssessments pending;
    private final ApplicationEventPublisher events;

    DuplicateRecordingFinder(
            CaseService cases,
            EvidenceItemRepository items,
            OutlineRepository outlines,
            RecordingLoader recordings,
            DuplicateRecordingRepository matches,
            PendingAssessments pending,
            ApplicationEventPublisher events) {
        this.cases = cases;
        this.items = items;
        this.outlines = outlines;
        this.recordings = recordings;
        this.matches = matches;
        this.pending = pending;
        this.events = events;
    }

    @Override
    public List<Match> like(UUID evidenceId) {
        return matches.ofRecording(evidenceId);
    }

    @Override
    public List<Match> ofCases(Set<UUID> caseIds) {
        return matches.ofCases(caseIds);
    }

    @Override
    public List<Sha256> copiedFromAnotherBattery(UUID caseId) {
        return matches.copies(caseId).stream()
                .filter(copy -> !sameBattery(caseId, copy.originalCaseId()))
                .map(DuplicateRecordingRepository.Copy::sha256)
                .distinct()
                .sorted()
                .toList();
    }

    private boolean sameBattery(UUID one, UUID other) {
        return cases.facts(one).ref().serial().equals(cases.facts(other).ref().serial());
    }

    @Override
    public List<UUID> casesToCompare() {
        return matches.queuedCases();
    }

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public Set<UUID> compare(UUID caseId) {
        matches.lockComparison();
        Set<UUID> affected = new TreeSet<>(); // in the order in which all transactions mark cases
        matches.lockQueued(caseId).forEach((id, outlined) -> {
            EvidenceItem item = items.find(id).orElseThrow();
            if (!outlined) {
                Recording recording = recordings.of(List.of(item)).get(id);
                outlines.outline(id, recording);
            }
            for (Match match : twins(item)) {
                matches.add(match);
                affected.add(match.otherCaseId());
                affected.add(caseId);
            }
            matches.dequeue(id);
        });
        affected.forEach(each -> {
            pending.mark(each);
            events.publishEvent(new DuplicateRecordingFoundEvent(each));
        });
        return affected;
    }

    private List<Match> twins(EvidenceItem item) {
        Map<UUID, Match> out = new TreeMap<>();
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
            Optional<Match> twin = likest(item, other, own, votes.byScale());
            twin.ifPresent(found -> out.put(other.id(), found));
            misses = twin.isPresent() ? 0 : misses + 1;
        }
        items.sameBytes(item.sha256()).stream()
                .filter(other -> !other.caseId().equals(item.caseId()))
                .forEach(other ->
                        out.put(other.id(), new Match(item.id(), other.id(), other.caseId(), 1, 0, item.durationS())));
        return new ArrayList<>(out.values());
    }

    private Optional<Match> likest(
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
                .max(Comparator.comparingDouble(Match::correlation));
    }

    /** Compares both in the order of their digests, so that the order of arrival does not matter. */
    private static Optional<Match> alike(
            EvidenceItem item, EvidenceItem other, VoltageOutline own, VoltageOutline its, List<Vote> votes) {
        if (own == null || votes == null) {
            return Optional.empty();
        }
        boolean first = item.sha256().compareTo(other.sha256()) < 0;
        return (first
                        ? CurveSimilarity.of(own, its, votes)
                        : CurveSimilarity.of(its, own, CurveSimilarity.turned(votes)))
                .map(like -> new Match(
                        item.id(),
                        other.id(),
                        other.caseId(),
                        Math.min(1, like.correlation()),
                        first ? like.laterS() : -like.laterS(),
                        like.overlapS()));
    }
}
