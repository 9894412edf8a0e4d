package org.voltdocket.assessment.rerun;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What is known of a run: how far it is and what it found. */
@Component
class RunReader {

    private final JdbcClient db;

    RunReader(JdbcClient db) {
        this.db = db;
    }

    private record Done(int cases, int lately, double latelySeconds, double wholeSeconds) {}

    RunProgress progress(ReassessmentRun run) {
        Done done = db.sql("""
                        select coalesce(sum(cardinality(case_ids)), 0),
                               coalesce(sum(cardinality(case_ids)) filter (where done_at > now() - interval '60 s'), 0),
                               coalesce(extract(epoch from clock_timestamp()
                                   - min(started_at) filter (where done_at > now() - interval '60 s')), 0),
                               coalesce(extract(epoch from max(done_at) - min(started_at)), 0)
                        from reassessment_chunk where reassessment_id = ? and done_at is not null""")
                .param(run.id())
                .query((row, n) -> new Done(row.getInt(1), row.getInt(2), row.getDouble(3), row.getDouble(4)))
                .single();
        double rate = run.state() == RunState.RUNNING
                ? rate(done.lately(), done.latelySeconds())
                : rate(done.cases(), done.wholeSeconds());
        Optional<Double> left = run.state().open()
                ? Optional.of((run.casesTotal() - done.cases()) / rate)
                        .filter(seconds -> run.state() == RunState.RUNNING && rate > 0)
                : Optional.of(0.0);
        return new RunProgress(
                done.cases(), rate, left, count("reassessment_change", run), count("reassessment_failure", run));
    }

    private static double rate(int cases, double seconds) {
        return seconds > 0 ? cases / seconds : 0;
    }

    private int count(String table, ReassessmentRun run) {
        return db.sql("select count(*) from " + table + " where reassessment_id = ?")
                .param(run.id())
                .query(Integer.class)
                .single();
    }

    /** Changed cases by number. */
    List<CaseChange> changes(UUID run, int from, int most) {
        return db.sql("""
                        select c.*, f.number from reassessment_change c join case_summary f on f.id = c.case_id
                        where c.reassessment_id = ? order by f.opened_at, f.id offset ? limit ?""")
                .param(run)
                .param(from)
                .param(most)
                .query((row, n) -> new CaseChange(
                        row.getObject("case_id", UUID.class),
                        row.getString("number"),
                        row.getString("leaning_before"),
                        row.getString("leaning_after"),
                        row.getString("cause_before"),
                        row.getString("cause_after"),
                        Arrays.asList((String[]) row.getArray("findings").getArray())))
                .list();
    }

    List<FailedCase> failures(UUID run, int most) {
        return db.sql("""
                        select f.number, r.reason from reassessment_failure r join case_summary f on f.id = r.case_id
                        where r.reassessment_id = ? order by f.opened_at, f.id limit ?""")
                .param(run)
                .param(most)
                .query((row, n) -> new FailedCase(row.getString(1), row.getString(2)))
                .list();
    }

    /** A way that cases go, with those that go it. */
    record Way(String before, String after, List<UUID> cases) {}

    /** Changed cases by leaning before and after; most first. */
    List<Way> ways(UUID run) {
        return ways(run, "coalesce(leaning_before, '')", "leaning_after", "reassessment_change");
    }

    /** Changed cases by row of the rule book; a case stands under each of its rows. Most first. */
    List<Way> rules(UUID run) {
        return ways(
                run, "coalesce(rule, '')", "''", "reassessment_change left join lateral unnest(rules) as rule on true");
    }

    private List<Way> ways(UUID run, String before, String after, String from) {
        return db.sql("select " + before + ", " + after + ", array_agg(case_id) from " + from
                        + " where reassessment_id = ? group by 1, 2 order by count(*) desc, 1, 2")
                .param(run)
                .query((row, n) -> new Way(row.getString(1), row.getString(2), Arrays.asList((UUID[])
                        row.getArray(3).getArray())))
                .list();
    }
}
