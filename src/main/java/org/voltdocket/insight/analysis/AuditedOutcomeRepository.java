package org.voltdocket.insight.analysis;

import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.TopicAnalysis.CaseFilter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads bench outcomes with the probabilities stated before the bench. */
@Component
class AuditedOutcomeRepository {

    /** The classes that a bench can distinguish. */
    enum OutcomeClass {
        DEFECT("defect-confirmed"),
        WEAR("wear-confirmed"),
        SOUND("no-fault-found");

        private final String outcome;

        OutcomeClass(String outcome) {
            this.outcome = outcome;
        }

        String outcome() {
            return outcome;
        }

        static OutcomeClass of(String outcome) {
            for (OutcomeClass told : values()) {
                if (told.outcome.equals(outcome)) {
                    return told;
                }
            }
            throw new IllegalArgumentException(outcome);
        }
    }

    /**
     * An audited case.
     *
     * @param group chemistry and kind of charging control
     * @param stated probabilities before the bench, in the order of {@link OutcomeClass}; absent where there was no assessment before
     */
    record Audited(String group, OutcomeClass told, Optional<double[]> stated) {}

    private static final String TEACHES = "i.outcome in ('defect-confirmed', 'wear-confirmed', 'no-fault-found')";
    private static final String GROUP = "coalesce(i.chemistry, '?') || ', ' || i.charging_control";

    private final JdbcClient db;
    private final JsonMapper json;

    AuditedOutcomeRepository(JdbcClient db, JsonMapper json) {
        this.db = db;
        this.json = json;
    }

    List<Audited> within(InsightQuery query) {
        CaseFilter filter = CaseFilter.claimedWithin(query).and(TEACHES);
        return db.sql("select " + GROUP
                        + " as kind, i.outcome, a.body from insight_case i left join assessment_summary a"
                        + " on a.id = i.stated_assessment where " + filter.where() + " order by i.number")
                .params(filter.parameters())
                .query((row, at) -> new Audited(
                        row.getString("kind"),
                        OutcomeClass.of(row.getString("outcome")),
                        Optional.ofNullable(row.getString("body")).map(this::stated)))
                .list();
    }

    Optional<CaseFilter> filter(InsightQuery query, String key) {
        int dot = key.lastIndexOf('.');
        if (dot < 0) {
            return Optional.empty();
        }
        CaseFilter filter = CaseFilter.claimedWithin(query)
                .and(TEACHES)
                .and("i.outcome = :outcome", "outcome", key.substring(dot + 1));
        String group = key.substring(0, dot);
        return Optional.of(group.equals("all") ? filter : filter.and(GROUP + " = :kind", "kind", group));
    }

    private double[] stated(String body) {
        double[] stated = new double[OutcomeClass.values().length];
        for (JsonNode one : json.readTree(body).path("causes")) {
            Cause cause = Cause.of(one.path("cause").asString());
            OutcomeClass told = cause == Cause.BATTERY_DEFECT
                    ? OutcomeClass.DEFECT
                    : cause == Cause.BATTERY_WORN ? OutcomeClass.WEAR : OutcomeClass.SOUND;
            stated[told.ordinal()] += one.path("probability").asDouble();
        }
        return stated;
    }
}
