package org.voltdocket.notice.finder;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.DuplicateRecordings.Match;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeFinder;
import org.voltdocket.notice.NoticeKind;

/** Reports duplicate recordings under other serials. Files with the same bytes are left to {@link EvidenceNoticeFinder}. */
@Component
class DuplicateRecordingNoticeFinder implements NoticeFinder {

    private final DuplicateRecordings fingerprints;
    private final EvidenceArchive archive;
    private final CaseService cases;

    DuplicateRecordingNoticeFinder(DuplicateRecordings fingerprints, EvidenceArchive archive, CaseService cases) {
        this.fingerprints = fingerprints;
        this.archive = archive;
        this.cases = cases;
    }

    @Override
    public List<FinderResult> find(CaseFacts file) {
        Map<UUID, List<Match>> twins = fingerprints.ofCases(Set.of(file.ref().id())).stream()
                .collect(Collectors.groupingBy(Match::evidenceId, TreeMap::new, Collectors.toList()));
        if (twins.isEmpty()) {
            return List.of();
        }
        Map<UUID, EvidenceItem> items = archive.ofCase(file.ref().id()).stream()
                .collect(Collectors.toMap(EvidenceItem::id, Function.identity()));
        List<FinderResult> found = new ArrayList<>();
        twins.forEach((id, each) -> found.addAll(of(file.ref(), items.get(id), each)));
        return found;
    }

    private List<FinderResult> of(CaseReference ref, EvidenceItem item, List<Match> twins) {
        List<Match> near = new ArrayList<>();
        List<FinderResult.Other> others = new ArrayList<>();
        for (Match twin : twins) {
            CaseReference other = cases.facts(twin.otherCaseId()).ref();
            boolean sameBytes = archive.ofCase(other.id()).stream()
                    .anyMatch(one -> one.sha256().equals(item.sha256()));
            if (!sameBytes && !other.serial().equals(ref.serial())) {
                near.add(twin);
                others.add(new FinderResult.Other(
                        other.id(), other.number().value(), other.serial().value()));
            }
        }
        if (near.isEmpty()) {
            return List.of();
        }
        List<FinderResult.Other> distinct = others.stream().distinct().toList();
        Match best = near.get(0);
        String how = String.format(Locale.ROOT, "correlation %.4f over %.0f s", best.correlation(), best.overlapS());
        return List.of(new FinderResult(
                NoticeKind.NEAR_RECORDING,
                item.id().toString(),
                List.of(item.fileName(), FinderResult.told(distinct), how),
                distinct));
    }
}
