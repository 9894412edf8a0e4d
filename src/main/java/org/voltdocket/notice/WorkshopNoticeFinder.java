package org.voltdocket.notice;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Holds the judged cases of every workshop against those of all others. */
@Component
class WorkshopNoticeFinder {

    private final JdbcClient db;

    WorkshopNoticeFinder(JdbcClient db) {
        this.db = db;
    }

    private record Count(UUID workshop, String name, int judged, int failed) {}

    /** Of each workshop what is found now; an empty list where nothing is. */
    Map<UUID, List<FinderResult>> find() {
        List<Count> counts = db.sql("""
                        select w.id, w.name, count(*) as judged,
                            count(*) filter (where f.battery_verdict = 'failed') as failed
                        from case_summary f join workshop_summary w on w.id = f.opened_workshop
                        where f.battery_verdict in ('sound', 'failed') group by w.id, w.name order by w.id""")
                .query((row, number) -> new Count(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getInt("judged"),
                        row.getInt("failed")))
                .list();
        int judged = counts.stream().mapToInt(Count::judged).sum();
        int failed = counts.stream().mapToInt(Count::failed).sum();
        int tested = (int) counts.stream()
                .filter(count -> count.judged() >= OneSidedResultTest.LEAST_OWN)
                .count();
        Map<UUID, List<FinderResult>> found = new LinkedHashMap<>();
        for (Count one : counts) {
            found.put(
                    one.workshop(),
                    OneSidedResultTest.judge(
                                    one.judged(), one.failed(), judged - one.judged(), failed - one.failed(), tested)
                            .map(result -> List.of(told(one, result)))
                            .orElse(List.of()));
        }
        return found;
    }

    /** The numbers are rounded so that one more case does not make it another notice: counts go by tens. */
    private static FinderResult told(Count one, OneSidedResultTest.Result result) {
        return new FinderResult(
                result.never() ? NoticeKind.WORKSHOP_NEVER_FAILS : NoticeKind.WORKSHOP_ALWAYS_FAILS,
                one.workshop().toString(),
                List.of(
                        one.name(),
                        String.valueOf(one.judged() / 10 * 10),
                        String.format(Locale.ROOT, "%.0f", 100 * result.share()),
                        odds(result.probability())),
                List.of());
    }

    /** One in so many, to a power of ten that is not more than it is. */
    private static String odds(double probability) {
        int power = (int) Math.min(12, Math.floor(-StrictMath.log10(probability)));
        return String.format(Locale.ROOT, "%,d", (long) StrictMath.pow(10, power))
                .replace(',', ' ');
    }
}
