package org.voltdocket.warranty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.Period;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Calendar months against tables worked by hand with a calendar, and against {@code java.time}. */
class WarrantyMonthsTest {

    @ParameterizedTest
    @CsvSource({
        // start, months, last day: Regulation 1182/71, article 3 (2) c, from memory
        "2025-01-31, 1, 2025-02-28",
        "2024-01-31, 1, 2024-02-29",
        "2023-01-31, 13, 2024-02-29",
        "2024-02-29, 12, 2025-02-28",
        "2024-02-29, 48, 2028-02-29",
        "2025-01-30, 1, 2025-02-28",
        "2025-03-31, 1, 2025-04-30",
        "2025-01-31, 2, 2025-03-31",
        "2025-10-31, 4, 2026-02-28",
        "2025-12-15, 24, 2027-12-15",
        "1999-12-31, 2, 2000-02-29",
        "2099-12-31, 2, 2100-02-28"
    })
    void aTermEndsWithTheSameNumberOrTheMonthsLastDay(LocalDate start, int months, LocalDate lastDay) {
        assertThat(WarrantyMonths.lastDay(start, months)).isEqualTo(lastDay);
        assertThat(WarrantyMonths.month(start, lastDay)).isEqualTo(months);
        assertThat(WarrantyMonths.month(start, lastDay.plusDays(1))).isEqualTo(months + 1);
    }

    @ParameterizedTest
    @CsvSource({
        // start, day, month of life, whole months, days: counted on a wall calendar
        "2025-01-31, 2025-01-31, 1, 0, 0",
        "2025-01-31, 2025-02-01, 1, 0, 1",
        "2025-01-31, 2025-02-28, 1, 1, 0",
        "2025-01-31, 2025-03-01, 2, 1, 1",
        "2025-01-31, 2025-03-30, 2, 1, 30",
        "2025-01-31, 2025-03-31, 2, 2, 0",
        "2025-01-31, 2025-04-01, 3, 2, 1",
        "2024-02-29, 2025-02-27, 12, 11, 29",
        "2024-02-29, 2025-02-28, 12, 12, 0",
        "2024-02-29, 2025-03-01, 13, 12, 1",
        "2023-05-15, 2025-05-14, 24, 23, 29",
        "2023-05-15, 2025-05-15, 24, 24, 0",
        "2023-05-15, 2025-05-16, 25, 24, 1"
    })
    void monthOfLifeAndAge(LocalDate start, LocalDate day, int month, int months, int days) {
        assertThat(WarrantyMonths.month(start, day)).isEqualTo(month);
        assertThat(WarrantyMonths.between(start, day)).isEqualTo(new WarrantyMonths.Span(months, days));
    }

    /** Where no month's end interferes, {@link Period} counts the same; everywhere the pieces add up again. */
    @Test
    void agreesWithJavaTimeOverFiveYearsOfDays() {
        for (LocalDate start = LocalDate.of(2023, 1, 1); start.getYear() < 2025; start = start.plusDays(1)) {
            for (int ahead = 0; ahead < 1900; ahead += 7) {
                LocalDate day = start.plusDays(ahead);
                WarrantyMonths.Span span = WarrantyMonths.between(start, day);
                assertThat(start.plusMonths(span.months()).plusDays(span.days()))
                        .isEqualTo(day);
                assertThat(start.plusMonths(span.months() + 1)).isAfter(day);
                if (start.getDayOfMonth() <= 28) {
                    Period period = Period.between(start, day);
                    assertThat(span).isEqualTo(new WarrantyMonths.Span((int) period.toTotalMonths(), period.getDays()));
                }
                int month = WarrantyMonths.month(start, day);
                assertThat(day).isBeforeOrEqualTo(start.plusMonths(month));
                assertThat(month == 1 || day.isAfter(start.plusMonths(month - 1)))
                        .isTrue();
            }
        }
    }

    @Test
    void nothingIsBeforeItsStart() {
        LocalDate start = LocalDate.of(2025, 1, 31);
        assertThatThrownBy(() -> WarrantyMonths.month(start, start.minusDays(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
