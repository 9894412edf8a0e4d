package org.voltdocket.claim.deadline;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.TreeSet;
import org.voltdocket.kernel.RequestException;

/** Parses the form of the working days. */
final class WorkingDaysParser {

    private static final int MOST_HOLIDAYS = 1000;
    private static final int MOST_DAYS = 250;

    private WorkingDaysParser() {}

    /** @throws RequestException if a field is invalid; for holidays the message names the line */
    static WorkingDayService.Setting parse(String decideDays, String answerDays, String holidays) {
        return new WorkingDayService.Setting(
                days("decideDays", decideDays), days("answerDays", answerDays), List.copyOf(dates(holidays)));
    }

    private static int days(String field, String text) {
        String digits = text == null ? "" : text.strip();
        if (digits.matches("\\d{1,3}")) {
            int days = Integer.parseInt(digits);
            if (days >= 1 && days <= MOST_DAYS) {
                return days;
            }
        }
        throw RequestException.invalid(
                "desk-refused",
                field,
                "Working days are a whole number from 1 to " + MOST_DAYS + "; read '" + digits + "'.");
    }

    private static TreeSet<LocalDate> dates(String text) {
        TreeSet<LocalDate> dates = new TreeSet<>();
        int line = 0;
        for (String row : (text == null ? "" : text).split("\\R")) {
            line++;
            String first = row.strip().split("\\s+", 2)[0];
            if (first.isEmpty()) {
                continue;
            }
            try {
                dates.add(LocalDate.parse(first));
            } catch (DateTimeParseException e) {
                throw RequestException.invalid(
                        "desk-refused",
                        "holidays",
                        "Line " + line + " of the holidays begins with no date such as 2026-12-25; read '" + first
                                + "'.");
            }
        }
        if (dates.size() > MOST_HOLIDAYS) {
            throw RequestException.invalid(
                    "desk-refused",
                    "holidays",
                    "At most " + MOST_HOLIDAYS + " holidays are kept; read " + dates.size() + ".");
        }
        return dates;
    }
}
