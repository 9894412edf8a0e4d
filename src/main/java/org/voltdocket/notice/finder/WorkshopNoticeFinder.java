package org.voltdocket.notice.finder;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeKind;
import org.voltdocket.notice.WorkshopComparison;

/** Compares the assessed cases of every workshop with those of all others. */
@Component
class WorkshopNoticeFinder implements WorkshopComparison {

    private final JdbcClient db;

    WorkshopNoticeFinder(JdbcClient db) {
        this.db = db;
    }

    private record Count(UUID workshop, String name, int assessed, int failed) {}

    /** The results by workshop; an empty list if there is none. */
    @Override
    public Map<UUID, List<FinderResult>> find() {
        List<Count> counts = db.sql("""
                        select w.id, w.name, count(*) as assessed,
                            count(*) filter (where f.battery_verdict = 'failed') as failed
                        from case_summary f join workshop_summary w on w.id = f.opened_workshop
                        where f.battery_verdict in ('sound', 'failed') group by w.id, w.name order by w.id""")
                .query((row, number) -> new Count(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getInt("assessed"),
                        row.getInt("failed")))
                .list();
        int assessed = counts.stream().mapToInt(Count::assessed).sum();
        int failed = counts.stream().mapToInt(Count::failed).sum();
        int tested = (int) counts.stream()
                .filter(count -> count.assessed() >= UniformResults.MIN_OWN)
                .count();
        Map<UUID, List<FinderResult>> found = new LinkedHashMap<>();
        for (Count one : counts) {
            found.put(
                    one.workshop(),
                    UniformResults.test(
                                    one.assessed(),
                                    one.failed(),
                                    assessed - one.assessed(),
                                    failed - one.failed(),
                                    tested)
                            .map(result -> List.of(result(one, result)))
                            .orElse(List.of()));
        }
        return found;
    }

    /** Numbers are rounded down to tens, so that one more case does not lead to another notice. */
    private static FinderResult result(Count one, UniformResults.Result result) {
        return new FinderResult(
                result.neverFails() ? NoticeKind.WORKSHOP_NEVER_FAILS : NoticeKind.WORKSHOP_ALWAYS_FAILS,
                one.workshop().toString(),
                List.of(
                        one.name(),
                        String.valueOf(one.assessed() / 10 * 10),
                        String.format(Locale.ROOT, "%.0f", 100 * result.othersShare()),
                        odds(result.pValue())),
                List.of());
    }

    /** The reciprocal of the p-value, rounded down to a power of ten. */
    private static String odds(double pValue) {
        int power = (int) Math.min(12, Math.floor(-StrictMath.log10(pValue)));
        return String.format(Locale.ROOT, "%,d", (long) StrictMath.pow(10, power))
                .replace(',', ' ');
    }
}
