package org.voltdocket.insight.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicAnalysis;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.TopicTable;
import org.voltdocket.insight.TopicTable.Cell;
import org.voltdocket.insight.TopicTable.Row;
import org.voltdocket.insight.chart.Drawing;
import org.voltdocket.insight.chart.FunnelChart;
import org.voltdocket.insight.estimate.Funnel;
import org.voltdocket.insight.estimate.Proportion;
import org.voltdocket.kernel.Interval;
import org.voltdocket.ui.TextFormatter;

/** Share of sound batteries by workshop: by bench outcome, by assessment, or claimed with too little evidence. */
@Component
class NoFaultAnalysis implements TopicAnalysis {

    private final JdbcClient db;
    private final TextFormatter words;

    NoFaultAnalysis(JdbcClient db, TextFormatter words) {
        this.db = db;
        this.words = words;
    }

    /** A workshop with its share of marked cases. */
    record Group(UUID id, String name, Proportion share) {}

    @Override
    public Topic topic() {
        return Topic.NO_FAULT;
    }

    @Override
    public TopicResult analyze(InsightQuery query) {
        List<Group> groups = groups(query);
        Proportion all = groups.stream().map(Group::share).reduce(new Proportion(0, 0), Proportion::plus);
        if (!all.known()) {
            return new TopicResult(
                    topic(), query, List.of(Statement.of("insight.no-fault.none")), table(List.of()), Optional.empty());
        }
        Funnel funnel = new Funnel(all.interval().value());
        return new TopicResult(
                topic(),
                query,
                statements(query, groups, all, funnel),
                table(groups.stream()
                        .map(group -> row(group, funnel, funnel.place(group.share())))
                        .toList()),
                Optional.of(drawing(groups, funnel, query)));
    }

    /** The share of all together, then each workshop outside the action limits. */
    static List<Statement> statements(InsightQuery query, List<Group> groups, Proportion all, Funnel funnel) {
        List<Statement> statements = new ArrayList<>();
        statements.add(Statement.of("insight.no-fault.all." + query.by(), all.count(), all.of(), funnel.target()));
        for (Group group : groups) {
            Funnel.Place place = funnel.place(group.share());
            if (outside(place)) {
                statements.add(Statement.of(
                                "insight.no-fault." + (place == Funnel.Place.FAR_HIGH ? "high" : "low"),
                                group.name(),
                                group.share().interval().value(),
                                group.share().of())
                        .withKey(group.id().toString()));
            }
        }
        return statements;
    }

    private static boolean outside(Funnel.Place place) {
        return place == Funnel.Place.FAR_HIGH || place == Funnel.Place.FAR_LOW;
    }

    @Override
    public Optional<CaseFilter> filter(InsightQuery query, String key) {
        try {
            CaseFilter of = population(query).and("i.workshop_id = :workshop", "workshop", UUID.fromString(key));
            return Optional.of(of.and(marked(query)));
        } catch (IllegalArgumentException noWorkshop) {
            return Optional.empty();
        }
    }

    private List<Group> groups(InsightQuery query) {
        CaseFilter filter = population(query);
        return db
                .sql("select i.workshop_id, i.workshop, count(*) filter (where " + marked(query) + ") as marked,"
                        + " count(*) as looked from insight_case i where " + filter.where()
                        + " group by 1, 2 order by 2, 1")
                .params(filter.parameters())
                .query((row, at) -> new Group(
                        row.getObject("workshop_id", UUID.class),
                        row.getString("workshop"),
                        new Proportion(row.getLong("marked"), row.getLong("looked"))))
                .list()
                .stream()
                .sorted(Comparator.comparingDouble(
                        (Group group) -> -group.share().interval().value()))
                .toList();
    }

    private static CaseFilter population(InsightQuery query) {
        CaseFilter claimed = CaseFilter.claimedWithin(query).and("i.workshop_id is not null");
        return switch (query.by()) {
            case "outcome" -> claimed.and("i.outcome is not null and i.outcome <> 'not-tested'");
            case "assessment" -> claimed.and("i.leaning not in ('open', 'contradictory')");
            default -> claimed.and("true");
        };
    }

    private static String marked(InsightQuery query) {
        return switch (query.by()) {
            case "outcome" -> "i.outcome = 'no-fault-found'";
            case "assessment" -> "i.leaning in ('vehicle-side', 'usage-side', 'no-fault-seen')";
            default -> "i.leaning = 'open'";
        };
    }

    static Row row(Group group, Funnel funnel, Funnel.Place place) {
        int size = Math.toIntExact(group.share().of());
        Interval share = group.share().interval();
        return Row.of(
                group.id().toString(),
                outside(place),
                Cell.text(group.name()),
                Cell.count(group.share().count()),
                Cell.count(size),
                Cell.share(share.value()),
                Cell.share(share.low()),
                Cell.share(share.high()),
                Cell.share(funnel.low(size, Funnel.ALARM)),
                Cell.share(funnel.high(size, Funnel.ALARM)),
                Cell.word("insight.place", place.name()));
    }

    private static TopicTable table(List<Row> rows) {
        return new TopicTable(
                List.of(
                        "workshop",
                        "marked",
                        "looked",
                        "share",
                        "share-low",
                        "share-high",
                        "limit-low",
                        "limit-high",
                        "place"),
                rows);
    }

    private Drawing drawing(List<Group> groups, Funnel funnel, InsightQuery query) {
        return FunnelChart.of(
                groups.stream()
                        .map(group -> new FunnelChart.Group(group.name(), group.share()))
                        .toList(),
                funnel,
                new FunnelChart.Names(
                        words.say("insight.no-fault.across." + query.by()),
                        words.say("insight.no-fault.up." + query.by()),
                        words.say("insight.chart.inside"),
                        words.say("insight.chart.outside"),
                        words.say("insight.chart.warning"),
                        words.say("insight.chart.alarm")));
    }
}
