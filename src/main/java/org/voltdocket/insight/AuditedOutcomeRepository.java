package org.voltdocket.insight;

import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.insight.TopicAnalysis.Lines;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** AuditedOutcomeRepository of returned batteries beside what the judge had stated before the bench. */
@Component
class AuditedOutcomeRepository {

    /** What a bench can tell apart. */
    enum Told {
        DEFECT("defect-confirmed"),
        WEAR("wear-confirmed"),
        SOUND("no-fault-found");

        private final String outcome;

        Told(String outcome) {
            this.outcome = outcome;
        }

        String outcome() {
            return outcome;
        }

        static Told of(String outcome) {
            for (Told told : values()) {
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
     * @param stated probabilities before the bench, in the order of {@link Told}; absent where nothing was judged before
     */
    record Audited(String group, Told told, Optional<double[]> stated) {}

    private static final String TEACHES = "i.outcome in ('defect-confirmed', 'wear-confirmed', 'no-fault-found')";
    private static final String GROUP = "coalesce(i.chemistry, '?') || ', ' || i.charging_control";

    private final JdbcClient db;
    private final JsonMapper json;

    AuditedOutcomeRepository(JdbcClient db, JsonMapper json) {
        this.db = db;
        this.json = json;
    }

    List<Audited> within(InsightQuery question) {
        Lines lines = Lines.claimedWithin(question).and(TEACHES);
        return db.sql("select " + GROUP + " as kind, i.outcome, a.body from insight_case i left join assessment a"
                        + " on a.id = i.stated_assessment where " + lines.where() + " order by i.number")
                .params(lines.parameters())
                .query((row, at) -> new Audited(
                        row.getString("kind"),
                        Told.of(row.getString("outcome")),
                        Optional.ofNullable(row.getString("body")).map(this::stated)))
                .list();
    }

    Optional<Lines> lines(InsightQuery question, String key) {
        int dot = key.lastIndexOf('.');
        if (dot < 0) {
            return Optional.empty();
        }
        Lines lines = Lines.claimedWithin(question)
                .and(TEACHES)
                .and("i.outcome = :outcome", "outcome", key.substring(dot + 1));
        String group = key.substring(0, dot);
        return Optional.of(group.equals("all") ? lines : lines.and(GROUP + " = :kind", "kind", group));
    }

    private double[] stated(String body) {
        double[] stated = new double[Told.values().length];
        for (JsonNode one : json.readTree(body).path("causes")) {
            Cause cause = Cause.of(one.path("cause").asString());
            Told told =
                    cause == Cause.BATTERY_DEFECT ? Told.DEFECT : cause == Cause.BATTERY_WORN ? Told.WEAR : Told.SOUND;
            stated[told.ordinal()] += one.path("probability").asDouble();
        }
        return stated;
    }
}
