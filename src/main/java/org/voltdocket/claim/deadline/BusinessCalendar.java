package org.voltdocket.claim.deadline;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;

/** Working days: Monday to Friday without the listed holidays (common practice). */
public final class BusinessCalendar {

    private final Set<LocalDate> holidays;

    /** @param holidays days off; those on a weekend change nothing */
    public BusinessCalendar(Collection<LocalDate> holidays) {
        this.holidays = new TreeSet<>(holidays);
    }

    public boolean works(LocalDate day) {
        return day.getDayOfWeek() != DayOfWeek.SATURDAY
                && day.getDayOfWeek() != DayOfWeek.SUNDAY
                && !holidays.contains(day);
    }

    /** The working day {@code workingDays} after the day, which itself is not counted. */
    public LocalDate after(LocalDate day, int workingDays) {
        return walk(day, workingDays, 1);
    }

    /** The working day {@code workingDays} before the day, which itself is not counted. */
    public LocalDate before(LocalDate day, int workingDays) {
        return walk(day, workingDays, -1);
    }

    private LocalDate walk(LocalDate from, int workingDays, int way) {
        LocalDate day = from;
        for (int left = workingDays; left > 0; ) {
            day = day.plusDays(way);
            if (works(day)) {
                left--;
            }
        }
        return day;
    }

    /** Number of working days after {@code from}, including {@code to}; negative if {@code to} is before {@code from}. */
    public int between(LocalDate from, LocalDate to) {
        if (to.isBefore(from)) {
            return -between(to, from);
        }
        // whole weeks first, to avoid a loop over years of days
        long weeks = java.time.temporal.ChronoUnit.WEEKS.between(from, to);
        int days = (int) weeks * 5;
        for (LocalDate day = from.plusWeeks(weeks).plusDays(1); !day.isAfter(to); day = day.plusDays(1)) {
            days += weekday(day) ? 1 : 0;
        }
        return days
                - (int) holidays.stream()
                        .filter(day -> weekday(day) && day.isAfter(from) && !day.isAfter(to))
                        .count();
    }

    private static boolean weekday(LocalDate day) {
        return day.getDayOfWeek().getValue() <= DayOfWeek.FRIDAY.getValue();
    }
}
