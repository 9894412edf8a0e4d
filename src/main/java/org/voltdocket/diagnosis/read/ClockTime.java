package org.voltdocket.diagnosis.read;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;

/** Reads ISO 8601 times with offset as RFC 3339 writes them; a blank may stand for the T. */
final class ClockTime {

    /** Answer for text that is no such time. */
    static final long NONE = Long.MIN_VALUE;

    private static final long SECOND = 1_000_000_000L;
    private static final int FIRST_YEAR = 1980;
    private static final int LAST_YEAR = 2200;

    private long dayOf = NONE;
    private long day;

    /** Nanoseconds since 1970-01-01T00:00Z, or {@link #NONE}. Years {@value #FIRST_YEAR} to {@value #LAST_YEAR}. */
    long parse(byte[] b, int from, int to) {
        if (to - from < 20 || b[from + 4] != '-' || b[from + 7] != '-' || b[from + 13] != ':' || b[from + 16] != ':') {
            return slow(b, from, to);
        }
        int year = number(b, from, 4);
        int month = number(b, from + 5, 2);
        int dayOfMonth = number(b, from + 8, 2);
        int hour = number(b, from + 11, 2);
        int minute = number(b, from + 14, 2);
        int second = number(b, from + 17, 2);
        byte t = b[from + 10];
        boolean wellFormed = t == 'T' || t == 't' || t == ' ';
        if (!wellFormed || (month | dayOfMonth | hour | minute | second) < 0 || year < FIRST_YEAR || year > LAST_YEAR) {
            return NONE;
        }
        if (hour > 23 || minute > 59 || second > 59) {
            return NONE;
        }
        int i = from + 19;
        long fraction = 0;
        if (b[i] == '.' || b[i] == ',') {
            int first = ++i;
            long unit = SECOND;
            for (; i < to && b[i] >= '0' && b[i] <= '9'; i++) {
                unit /= 10;
                fraction += unit * (b[i] - '0');
            }
            if (i == first || i - first > 9) {
                return NONE;
            }
        }
        long offset = offset(b, i, to);
        long epochDay = offset == NONE ? NONE : epochDay(year, month, dayOfMonth);
        if (epochDay == NONE) {
            return NONE;
        }
        return (epochDay * 86_400 + hour * 3600 + minute * 60 + second - offset) * SECOND + fraction;
    }

    private static long offset(byte[] b, int at, int to) {
        if (at + 1 == to && (b[at] == 'Z' || b[at] == 'z')) {
            return 0;
        }
        boolean colon = at + 6 == to && b[at + 3] == ':';
        boolean hoursOnly = at + 3 == to;
        if (!colon && !hoursOnly && at + 5 != to || b[at] != '+' && b[at] != '-') {
            return NONE;
        }
        int hours = number(b, at + 1, 2);
        int minutes = hoursOnly ? 0 : number(b, at + (colon ? 4 : 3), 2);
        if (hours < 0 || minutes < 0 || hours > 18 || minutes > 59) {
            return NONE;
        }
        return (b[at] == '-' ? -1 : 1) * (hours * 3600L + minutes * 60L);
    }

    /** Most rows share a day, so the last one is remembered. */
    private long epochDay(int year, int month, int dayOfMonth) {
        long key = year * 10_000L + month * 100 + dayOfMonth;
        if (key != dayOf) {
            try {
                day = LocalDate.of(year, month, dayOfMonth).toEpochDay();
                dayOf = key;
            } catch (DateTimeException e) {
                return NONE;
            }
        }
        return day;
    }

    private static int number(byte[] b, int at, int width) {
        int value = 0;
        for (int i = at; i < at + width; i++) {
            if (b[i] < '0' || b[i] > '9') {
                return -1;
            }
            value = value * 10 + (b[i] - '0');
        }
        return value;
    }

    /** Shapes that are rare: no seconds. */
    private static long slow(byte[] b, int from, int to) {
        try {
            OffsetDateTime time =
                    offsetDateTime(new String(b, from, to - from, java.nio.charset.StandardCharsets.UTF_8));
            boolean sane = time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR;
            return sane ? time.toEpochSecond() * SECOND + time.getNano() : NONE;
        } catch (DateTimeParseException e) {
            return NONE;
        }
    }

    /**
     * The clock time with its offset, for text that {@link #parse} has read.
     *
     * @throws DateTimeParseException if the text is no such time
     */
    static OffsetDateTime offsetDateTime(String text) {
        String iso =
                text.strip().replaceFirst("^(\\d{4}-\\d\\d-\\d\\d)[ t]", "$1T").replace(',', '.');
        iso = iso.replaceFirst("(:[0-9.]+[+-]\\d\\d)$", "$1:00");
        return OffsetDateTime.parse(iso.replaceFirst("(:[0-9.]+[+-]\\d\\d)(\\d\\d)$", "$1:$2"));
    }
}
