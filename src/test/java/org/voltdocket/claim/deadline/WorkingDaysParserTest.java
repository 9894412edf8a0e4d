package org.voltdocket.claim.deadline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.kernel.RequestException;

class WorkingDaysParserTest {

    @Test
    void holidaysAreSortedAndMayHaveRemarks() {
        WorkingDayService.Setting setting =
                WorkingDaysParser.parse(" 1 ", "250", "2026-12-25 Christmas\n\n2026-01-01\r\n2026-12-25");
        assertThat(setting.decideDays()).isEqualTo(1);
        assertThat(setting.answerDays()).isEqualTo(250);
        assertThat(setting.holidays()).containsExactly(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 12, 25));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 10, '', decideDays",
        "251, 10, '', decideDays",
        "five, 10, '', decideDays",
        "5, -1, '', answerDays",
        "5, 10, 25.12.2026, holidays",
        "5, 10, 2026-02-30, holidays",
    })
    void invalidFieldsAreRefusedByName(String decideDays, String answerDays, String holidays, String field) {
        RequestException refused = catchThrowableOfType(
                RequestException.class, () -> WorkingDaysParser.parse(decideDays, answerDays, holidays));
        assertThat(refused.field()).isEqualTo(field);
    }

    @Test
    void theMessageNamesTheLineOfAnInvalidHoliday() {
        RequestException refused = catchThrowableOfType(
                RequestException.class, () -> WorkingDaysParser.parse("5", "10", "2026-12-25\n\nChristmas"));
        assertThat(refused).hasMessageContaining("Line 3");
    }
}
