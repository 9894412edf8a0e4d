package org.voltdocket.insight;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.insight.estimate.BlandAltman;
import org.voltdocket.insight.estimate.CohensKappa;
import org.voltdocket.kernel.Actor;

/** Agreement of the workshops' tests with the bench: categories by kappa, instruments by Bland and Altman. */
@Service
@Transactional(readOnly = true)
public class TestAgreementService {

    /** Categories that both the assessment and the bench use. */
    public static final List<String> CATEGORIES = List.of("sound", "wear", "defect");

    private static final Map<String, String> OUTCOMES =
            Map.of("no-fault-found", "sound", "wear-confirmed", "wear", "defect-confirmed", "defect");

    private final JdbcClient db;

    TestAgreementService(JdbcClient db) {
        this.db = db;
    }

    /**
     * A battery with its verdict before the bench and its bench outcome.
     *
     * @param before battery verdict before bench evidence was added; for a failed battery its kind
     * @param outcome of the bench
     */
    public record Judged(String caseNumber, String workshop, String before, String outcome) {}

    /**
     * Contingency table of one workshop, or of all.
     *
     * @param workshop its name; empty for all workshops
     * @param table by {@link #CATEGORIES}: rows before the bench, columns by the bench
     * @param leftOut batteries without a category on either side
     * @param kappa empty where it is not defined
     */
    public record Judgements(String workshop, long[][] table, long leftOut, Optional<CohensKappa> kappa) {

        /** Batteries with a category on both sides. */
        public long count() {
            long sum = 0;
            for (long[] row : table) {
                for (long cell : row) {
                    sum += cell;
                }
            }
            return sum;
        }
    }

    /**
     * Two readings of the cranking current of one battery, A, by the same standard.
     *
     * @param instrument serial of the workshop's instrument
     */
    public record Pair(String caseNumber, String instrument, String workshop, double workshopA, double benchA) {

        /** Of the workshop's reading against the bench's, per cent. */
        public double differencePct() {
            return 100 * (workshopA - benchA) / benchA;
        }

        /** Mean of both, A. */
        public double mean() {
            return (workshopA + benchA) / 2;
        }
    }

    /**
     * An instrument against the bench.
     *
     * @param limits of the differences, per cent; empty below three pairs
     */
    public record Instrument(String serial, List<String> workshops, List<Pair> pairs, Optional<BlandAltman> limits) {}

    private static void require(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("agreement over all workshops is the distributor's");
        }
    }

    /** All together first, then each workshop, those with most batteries first. */
    public List<Judgements> judgements(Actor actor) {
        require(actor);
        List<Judged> all = db.sql("""
                        select f.number, coalesce(w.name, '') as workshop, r.outcome,
                            case a.battery_verdict when 'sound' then 'sound' else a.battery_reason end as before
                        from returned_result r
                        join case_summary f on f.id = r.case_id
                        join assessment_summary a on a.id = r.assessment_id
                        left join workshop_summary w on w.id = f.opened_workshop
                        where r.outcome <> 'not-tested' order by r.ordinal""")
                .query((row, n) -> new Judged(
                        row.getString("number"),
                        row.getString("workshop"),
                        row.getString("before"),
                        row.getString("outcome")))
                .list();
        return judgements(all);
    }

    static List<Judgements> judgements(List<Judged> all) {
        Map<String, List<Judged>> byWorkshop = new LinkedHashMap<>();
        all.forEach(one -> byWorkshop
                .computeIfAbsent(one.workshop(), name -> new ArrayList<>())
                .add(one));
        List<Judgements> judgements = new ArrayList<>();
        byWorkshop.forEach((name, ones) -> judgements.add(judgements(name, ones)));
        judgements.sort(Comparator.comparingLong(Judgements::count).reversed().thenComparing(Judgements::workshop));
        judgements.add(0, judgements("", all));
        return judgements;
    }

    private static Judgements judgements(String workshop, List<Judged> all) {
        long[][] table = new long[CATEGORIES.size()][CATEGORIES.size()];
        long leftOut = 0;
        for (Judged one : all) {
            int before = CATEGORIES.indexOf(one.before());
            int bench = CATEGORIES.indexOf(OUTCOMES.getOrDefault(one.outcome(), ""));
            if (before < 0 || bench < 0) {
                leftOut++;
            } else {
                table[before][bench]++;
            }
        }
        return new Judgements(workshop, table, leftOut, CohensKappa.of(table));
    }

    /** Every instrument that has a serial and read a battery that the bench read too; those most apart first. */
    public List<Instrument> instruments(Actor actor) {
        require(actor);
        return instruments(pairs());
    }

    static List<Instrument> instruments(List<Pair> all) {
        Map<String, List<Pair>> bySerial = new LinkedHashMap<>();
        all.forEach(pair -> bySerial.computeIfAbsent(pair.instrument(), serial -> new ArrayList<>())
                .add(pair));
        List<Instrument> instruments = new ArrayList<>();
        bySerial.forEach((serial, pairs) -> instruments.add(new Instrument(
                serial,
                pairs.stream().map(Pair::workshop).distinct().sorted().toList(),
                List.copyOf(pairs),
                pairs.size() < BlandAltman.LEAST
                        ? Optional.empty()
                        : Optional.of(BlandAltman.of(
                                pairs.stream().mapToDouble(Pair::differencePct).toArray())))));
        instruments.sort(Comparator.comparingDouble((Instrument one) ->
                        one.limits().map(limits -> -distance(limits)).orElse(1.0))
                .thenComparing(Instrument::serial));
        return instruments;
    }

    /** How far the nearer end of the bias's interval is from zero; 0 where the interval holds it. */
    private static double distance(BlandAltman limits) {
        return Math.max(0, Math.max(limits.bias().low(), -limits.bias().high()));
    }

    private List<Pair> pairs() {
        return db.sql("""
                        with bench as (
                            select distinct on (b.return_id) b.return_id, t.case_id, t.reading as r
                            from bench_evidence b
                            join battery_test t on t.evidence_id = b.evidence_id and t.origin = 'bench'
                            where t.reading ->> 'crankingCurrentA' is not null
                            order by b.return_id, (t.reading ->> 'takenAt')::timestamptz desc, t.ordinal desc),
                        own as (
                            select distinct on (t.case_id) t.case_id, t.reading as r
                            from battery_test t
                            where t.origin <> 'bench'
                              and t.case_id in (select case_id from bench)
                              and t.reading ->> 'crankingCurrentA' is not null
                              and t.reading -> 'instrument' ->> 'serial' is not null
                              and t.reading ->> 'chargedBefore' = 'true'
                            order by t.case_id, (t.reading ->> 'takenAt')::timestamptz desc, t.ordinal desc)
                        select f.number, coalesce(w.name, '') as workshop, own.r -> 'instrument' ->> 'serial' as instrument,
                               (own.r ->> 'crankingCurrentA')::double precision as workshop_a,
                               (bench.r ->> 'crankingCurrentA')::double precision as bench_a
                        from bench join own using (case_id) join case_summary f on f.id = case_id
                        left join workshop_summary w on w.id = f.opened_workshop
                        where own.r ->> 'crankingStandard' is not distinct from bench.r ->> 'crankingStandard'
                          and (bench.r ->> 'crankingCurrentA')::double precision > 0
                        order by instrument, f.number""")
                .query((row, n) -> new Pair(
                        row.getString("number"),
                        row.getString("instrument"),
                        row.getString("workshop"),
                        row.getDouble("workshop_a"),
                        row.getDouble("bench_a")))
                .list();
    }
}
