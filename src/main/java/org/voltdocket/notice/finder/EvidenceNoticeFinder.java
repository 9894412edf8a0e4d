package org.voltdocket.notice.finder;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeFinder;
import org.voltdocket.notice.NoticeKind;

/** Compares the evidence of a case with the evidence of cases with other serials. */
@Component
class EvidenceNoticeFinder implements NoticeFinder {

    /** Two batteries cannot be tested by one instrument within this time; a choice of this project. */
    private static final Duration LEAST_BETWEEN = Duration.ofMinutes(1);

    private final EvidenceArchive archive;
    private final EvidenceHashes prints;

    EvidenceNoticeFinder(EvidenceArchive archive, EvidenceHashes prints) {
        this.archive = archive;
        this.prints = prints;
    }

    @Override
    public List<FinderResult> find(CaseFacts file) {
        List<FinderResult> found = new ArrayList<>();
        for (EvidenceItem item : archive.ofCase(file.ref().id())) {
            prints.take(item);
            new Comparison(file.ref().serial().value(), item, found).compare();
        }
        return found;
    }

    /** One item against all others. */
    private final class Comparison {
        private final String serial;
        private final EvidenceItem item;
        private final List<FinderResult> found;

        Comparison(String serial, EvidenceItem item, List<FinderResult> found) {
            this.serial = serial;
            this.item = item;
            this.found = found;
        }

        void compare() {
            List<EvidenceHashes.Hash> own = prints.of(item.id());
            List<EvidenceHashes.Alike> same = alike(own, "bytes");
            add(NoticeKind.SAME_FILE, same, item.fileName(), item.sha256().hex().substring(0, 16));
            if (!same.isEmpty()) {
                return; // equal bytes have equal readings
            }
            List<EvidenceHashes.Alike> readings = alike(own, "readings");
            if (!readings.isEmpty()) {
                add(
                        NoticeKind.SAME_READINGS,
                        readings,
                        item.fileName(),
                        readings.get(0).fullValue());
            }
            moment(own);
            photo(own);
        }

        private void moment(List<EvidenceHashes.Hash> own) {
            own.stream()
                    .filter(print -> print.method().equals("moment"))
                    .findFirst()
                    .ifPresent(print -> {
                        OffsetDateTime at = OffsetDateTime.parse(print.fullValue());
                        String instrument =
                                print.value().substring(0, print.value().lastIndexOf('|'));
                        List<String> minutes = List.of(
                                EvidenceHashes.minute(instrument, at, -1),
                                EvidenceHashes.minute(instrument, at, 0),
                                EvidenceHashes.minute(instrument, at, 1));
                        List<EvidenceHashes.Alike> close = prints.alike("moment", minutes, serial).stream()
                                .filter(one -> Duration.between(OffsetDateTime.parse(one.fullValue()), at)
                                                .abs()
                                                .compareTo(LEAST_BETWEEN)
                                        < 0)
                                .toList();
                        add(NoticeKind.SAME_MOMENT, close, item.fileName(), instrument + ", " + at);
                    });
        }

        private void photo(List<EvidenceHashes.Hash> own) {
            own.stream()
                    .filter(print -> print.method().equals("photo"))
                    .findFirst()
                    .ifPresent(print -> {
                        long hash = Long.parseUnsignedLong(print.fullValue());
                        List<EvidenceHashes.Alike> near = alike(own, "photo").stream()
                                .filter(one -> PerceptualHash.distance(hash, Long.parseUnsignedLong(one.fullValue()))
                                        <= PerceptualHash.MOST_BITS)
                                .toList();
                        int most = near.stream()
                                .mapToInt(one -> PerceptualHash.distance(hash, Long.parseUnsignedLong(one.fullValue())))
                                .max()
                                .orElse(0);
                        add(NoticeKind.NEAR_PHOTO, near, item.fileName(), String.valueOf(most));
                    });
        }

        private List<EvidenceHashes.Alike> alike(List<EvidenceHashes.Hash> own, String method) {
            List<String> values = own.stream()
                    .filter(print -> print.method().equals(method))
                    .map(EvidenceHashes.Hash::value)
                    .toList();
            return values.isEmpty() ? List.of() : prints.alike(method, values, serial);
        }

        private void add(NoticeKind kind, List<EvidenceHashes.Alike> others, String name, String detail) {
            if (!others.isEmpty()) {
                List<FinderResult.Other> cases = others.stream()
                        .map(EvidenceHashes.Alike::other)
                        .distinct()
                        .toList();
                found.add(new FinderResult(
                        kind, item.id().toString(), List.of(name, FinderResult.told(cases), detail), cases));
            }
        }
    }
}
