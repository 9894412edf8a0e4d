package org.voltdocket.demo.year;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class YearPlanTest {

    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
    private static final YearPlan YEAR = new YearPlan(DAY);

    @Test
    void theYearHasItsThreeThousandCasesInOrder() {
        assertThat(YEAR.cases()).hasSize(YearPlan.CASES);
        assertThat(YEAR.cases())
                .extracting(YearCase::claimedAt)
                .isSorted()
                .last()
                .satisfies(at -> assertThat(at).isBefore(DAY + "T00:00:00Z"));
        assertThat(YEAR.cases().stream().map(YearCase::serial).distinct()).hasSize(YearPlan.CASES);
        assertThat(YEAR.cases().stream().map(YearCase::garage).distinct()).hasSize(12);
        assertThat(YEAR.cases().stream().map(YearCase::make).distinct()).hasSize(5);
    }

    @Test
    void theSameDayGivesTheSameYear() {
        YearPlan again = new YearPlan(YEAR.last());
        assertThat(again.cases()).isEqualTo(YEAR.cases());
        assertThat(again.ranges()).isEqualTo(YEAR.ranges());
        assertThat(again.sales()).isEqualTo(YEAR.sales());
    }

    /** The bad batch has many times the claims of any other. */
    @Test
    void oneBatchIsBad() {
        Map<String, Long> claims = YEAR.cases().stream()
                .collect(Collectors.groupingBy(one -> one.serial().value().substring(0, 11), Collectors.counting()));
        String bad = "YE74-"
                + BatteryProduct.batch(YEAR.last().minusWeeks(BatteryProduct.BAD_WEEK))
                        .substring(1);
        long most = claims.entrySet().stream()
                .filter(e -> !e.getKey().equals(bad))
                .mapToLong(Map.Entry::getValue)
                .max()
                .orElseThrow();
        assertThat(claims.get(bad)).isGreaterThan(2 * most);
    }

    @Test
    void aHastyWorkshopSendsOneTestOnly() {
        for (YearCase one : YEAR.cases().subList(0, 300)) {
            assertThat(YearTests.ofWorkshop(one).size() == 1 || one.garage().tests())
                    .isTrue();
        }
    }
}
