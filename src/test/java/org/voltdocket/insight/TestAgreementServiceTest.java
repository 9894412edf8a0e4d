package org.voltdocket.insight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.insight.TestAgreementService.Instrument;
import org.voltdocket.insight.TestAgreementService.Judged;
import org.voltdocket.insight.TestAgreementService.Judgements;
import org.voltdocket.insight.TestAgreementService.Pair;

class TestAgreementServiceTest {

    private static void add(List<Judged> all, int times, String workshop, String before, String outcome) {
        for (int i = 0; i < times; i++) {
            all.add(new Judged("V-" + all.size(), workshop, before, outcome));
        }
    }

    /**
     * Two categories with 20, 5, 10 and 15 batteries: observed agreement 0.70, expected 0.50, so kappa is 0.40. A worked example
     * that many textbooks repeat, from memory; the arithmetic is in the comment.
     */
    @Test
    void kappaOfAWorkedExample() {
        List<Judged> all = new ArrayList<>();
        add(all, 20, "North", "sound", "no-fault-found");
        add(all, 5, "North", "sound", "defect-confirmed");
        add(all, 10, "North", "defect", "no-fault-found");
        add(all, 15, "North", "defect", "defect-confirmed");
        Judgements total = TestAgreementService.judgements(all).get(0);
        assertThat(total.workshop()).isEmpty();
        assertThat(total.count()).isEqualTo(50);
        assertThat(total.table()[0]).containsExactly(20, 0, 5);
        assertThat(total.table()[2]).containsExactly(10, 0, 15);
        assertThat(total.kappa().orElseThrow().kappa().value()).isCloseTo(0.40, within(1e-12));
    }

    @Test
    void batteriesWithoutACategoryAreLeftOutAndCounted() {
        List<Judged> all = new ArrayList<>();
        add(all, 2, "North", "sound", "no-fault-found");
        add(all, 3, "North", "not-judged", "no-fault-found");
        add(all, 1, "North", "sound", "damaged-by-use");
        Judgements total = TestAgreementService.judgements(all).get(0);
        assertThat(total.count()).isEqualTo(2);
        assertThat(total.leftOut()).isEqualTo(4);
    }

    @Test
    void workshopsWithMostBatteriesComeFirst() {
        List<Judged> all = new ArrayList<>();
        add(all, 1, "North", "sound", "no-fault-found");
        add(all, 3, "South", "wear", "wear-confirmed");
        assertThat(TestAgreementService.judgements(all))
                .extracting(Judgements::workshop)
                .containsExactly("", "South", "North");
    }

    @Test
    void anInstrumentWithABiasComesBeforeOneWithout() {
        List<Pair> pairs = new ArrayList<>();
        double[] noise = {-1.5, 0.8, 1.4, -0.6, 0.1, -0.2};
        for (int i = 0; i < noise.length; i++) {
            double bench = 600 + 25 * i;
            pairs.add(new Pair("V-" + i, "FAIR", "North", bench * (1 + noise[i] / 100), bench));
            pairs.add(new Pair("W-" + i, "LOW", "South", bench * (0.92 + noise[i] / 100), bench));
        }
        pairs.add(new Pair("X-1", "SELDOM", "West", 500, 600));
        List<Instrument> instruments = TestAgreementService.instruments(pairs);
        assertThat(instruments).extracting(Instrument::serial).containsExactly("LOW", "FAIR", "SELDOM");
        assertThat(instruments.get(0).limits().orElseThrow().bias().value()).isCloseTo(-8, within(1e-9));
        assertThat(instruments.get(2).limits()).isEmpty();
    }
}
