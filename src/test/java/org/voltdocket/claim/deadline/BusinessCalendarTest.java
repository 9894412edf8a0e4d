package org.voltdocket.claim.deadline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Working days counted by hand on the calendar of December 2026, with Christmas Day and New Year's Day off. */
class BusinessCalendarTest {

    private static final BusinessCalendar CALENDAR = new BusinessCalendar(
            List.of(LocalDate.of(2026, 12, 25), LocalDate.of(2026, 12, 26), LocalDate.of(2027, 1, 1)));

    @ParameterizedTest
    @CsvSource({
        // Thursday 24 December; Friday is off, 26 December is a Saturday
        "2026-12-24, 0, 2026-12-24",
        "2026-12-24, 1, 2026-12-28",
        "2026-12-24, 5, 2027-01-04",
        "2026-12-19, 1, 2026-12-21",
        "2026-12-20, 5, 2026-12-28",
        "2026-12-18, 5, 2026-12-28",
        "2026-11-25, 10, 2026-12-09",
        "2024-02-28, 2, 2024-03-01"
    })
    void theDayAfterSoManyWorkingDays(LocalDate day, int workingDays, LocalDate expected) {
        assertThat(CALENDAR.after(day, workingDays)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-12-24, 2026-12-24, 0",
        "2026-12-24, 2026-12-25, 0",
        "2026-12-24, 2026-12-28, 1",
        "2026-12-18, 2026-12-21, 1",
        "2026-12-19, 2026-12-20, 0",
        "2026-12-01, 2027-01-04, 22",
        "2026-12-28, 2026-12-24, -1",
        "2025-12-31, 2026-12-31, 260"
    })
    void workingDaysBetween(LocalDate from, LocalDate to, int expected) {
        assertThat(CALENDAR.between(from, to)).isEqualTo(expected);
    }

    /** The short way over whole weeks against a walk day by day. */
    @Test
    void theShortWayCountsAsTheLongOne() {
        LocalDate from = LocalDate.of(2026, 10, 1);
        for (int start = 0; start < 120; start++) {
            LocalDate day = from.plusDays(start);
            int walked = 0;
            for (LocalDate to = day; to.isBefore(day.plusDays(130)); to = to.plusDays(1)) {
                walked += !to.equals(day) && CALENDAR.works(to) ? 1 : 0;
                assertThat(CALENDAR.between(day, to)).as("%s to %s", day, to).isEqualTo(walked);
            }
            assertThat(CALENDAR.works(CALENDAR.before(day, 3))).isTrue();
            assertThat(CALENDAR.between(CALENDAR.before(day, 3).minusDays(1), day.minusDays(1)))
                    .isEqualTo(3);
        }
    }
}
