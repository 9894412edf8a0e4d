package org.voltdocket.warranty;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * Calendar months from a day on. A term of months ends with the day of the same number in its last month, or with that
 * month's last day where the number does not occur: 31 January and one month is 28 or 29 February. The day from which the
 * term runs is not counted. Source: Regulation (EEC, Euratom) No 1182/71, article 3 (1), (2) c; also common practice in
 * trade. From memory.
 */
public final class WarrantyMonths {

    private WarrantyMonths() {}

    /** Whole months and the days that follow them. */
    public record Span(int months, int days) {}

    /** Last day of a term. Each end is reckoned from the start, so that a short February moves no later month. */
    public static LocalDate lastDay(LocalDate start, int months) {
        return start.plusMonths(months);
    }

    /**
     * In which month of its life something is, counted from 1. Month k lasts through {@code lastDay(start, k)}.
     *
     * @param day not before {@code start}
     */
    public static int month(LocalDate start, LocalDate day) {
        if (day.isBefore(start)) {
            throw new IllegalArgumentException(day + " is before " + start);
        }
        long months = ChronoUnit.MONTHS.between(start.withDayOfMonth(1), day.withDayOfMonth(1));
        int month = (int) Math.max(1, months);
        return day.isAfter(lastDay(start, month)) ? month + 1 : month;
    }

    /**
     * Months completed between two days, and the days since the last of them.
     *
     * @param to not before {@code from}
     */
    public static Span between(LocalDate from, LocalDate to) {
        int months = (int) ChronoUnit.MONTHS.between(from.withDayOfMonth(1), to.withDayOfMonth(1));
        if (lastDay(from, months).isAfter(to)) {
            months--;
        }
        return new Span(months, (int) ChronoUnit.DAYS.between(lastDay(from, months), to));
    }
}
