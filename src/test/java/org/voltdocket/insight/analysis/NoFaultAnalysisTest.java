package org.voltdocket.insight.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicResult.Statement;
import org.voltdocket.insight.analysis.NoFaultAnalysis.Group;
import org.voltdocket.insight.estimate.Funnel;
import org.voltdocket.insight.estimate.Proportion;

/** Which workshops the funnel plot names, over a few workshops in memory. */
class NoFaultAnalysisTest {

    private static final InsightQuery QUERY =
            InsightQuery.of(Topic.NO_FAULT, LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 31), "outcome");

    private static Group group(String name, long marked, long of) {
        return new Group(UUID.nameUUIDFromBytes(name.getBytes()), name, new Proportion(marked, of));
    }

    private static List<Statement> statements(Group... groups) {
        List<Group> all = List.of(groups);
        Proportion together = all.stream().map(Group::share).reduce(new Proportion(0, 0), Proportion::plus);
        return NoFaultAnalysis.statements(
                QUERY, all, together, new Funnel(together.interval().value()));
    }

    @Test
    void theShareOfAllComesFirst() {
        Statement first =
                statements(group("North", 20, 100), group("South", 22, 100)).get(0);
        assertThat(first.code()).isEqualTo("insight.no-fault.all.outcome");
        assertThat(first.arguments().get(0)).isEqualTo(42L);
        assertThat(first.arguments().get(1)).isEqualTo(200L);
        assertThat((Double) first.arguments().get(2)).isCloseTo(0.21, within(0.01));
    }

    @Test
    void aWorkshopFarAboveTheOthersIsNamedAndLeadsToItsCases() {
        Group high = group("High", 60, 100);
        List<Statement> statements =
                statements(high, group("North", 20, 100), group("South", 22, 100), group("West", 19, 100));
        assertThat(statements).hasSize(2);
        assertThat(statements.get(1).code()).isEqualTo("insight.no-fault.high");
        assertThat(statements.get(1).arguments()).contains("High", 100L);
        assertThat(statements.get(1).key()).isEqualTo(Optional.of(high.id().toString()));
    }

    /** With 3 of 4 where 30 % are expected, the binomial tail is 8 %: chance explains it. */
    @Test
    void aSmallWorkshopIsNotNamedForAHighShare() {
        assertThat(statements(group("Small", 3, 4), group("North", 30, 100), group("South", 29, 100)))
                .hasSize(1);
    }

    @Test
    void theRowOfANamedWorkshopIsHighlighted() {
        Funnel funnel = new Funnel(0.2);
        Group high = group("High", 60, 100);
        Group usual = group("Usual", 20, 100);
        assertThat(NoFaultAnalysis.row(high, funnel, funnel.place(high.share())).marked())
                .isTrue();
        assertThat(NoFaultAnalysis.row(usual, funnel, funnel.place(usual.share()))
                        .marked())
                .isFalse();
    }
}
