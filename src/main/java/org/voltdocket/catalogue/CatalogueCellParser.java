package org.voltdocket.catalogue;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.kernel.BatterySerial;

/** What may stand in a cell, read into the value that the database keeps; throws {@link IllegalArgumentException}. */
enum CatalogueCellParser {
    CODE(text -> code(text)),
    NAME(text -> bounded(text, 120)),
    BATCH(text -> bounded(text, 40)),
    CHEMISTRY(text -> known(text, Chemistry.values(), Chemistry::id)),
    STANDARD(text -> known(text, CrankingStandard.values(), CrankingStandard::id)),
    CAPACITY(text -> number(text, 1, 400, "Ah")),
    CRANKING(text -> number(text, 20, 3000, "A")),
    PREFIX(text -> prefix(text)),
    SERIAL(text -> BatterySerial.parse(text).value()),
    DAY(text -> day(text)),
    MONTH(text -> month(text)),
    COUNT(text -> whole(text, 1)),
    SOLD(text -> whole(text, 0));

    private static final Pattern CODE_FORM = Pattern.compile("[A-Z0-9][A-Z0-9._-]{0,29}");
    private static final Pattern PREFIX_FORM = Pattern.compile("[A-Z0-9./-]{1,40}");
    private static final Pattern NUMBER_FORM = Pattern.compile("\\d{1,6}(\\.\\d{1,6})?");
    private static final Pattern WHOLE_FORM = Pattern.compile("\\d{1,9}");

    private final Function<String, Object> reader;

    CatalogueCellParser(Function<String, Object> reader) {
        this.reader = reader;
    }

    /** The type of the values, here and in the database. */
    Class<?> type() {
        return switch (this) {
            case CAPACITY, CRANKING -> Double.class;
            case DAY, MONTH -> LocalDate.class;
            case COUNT, SOLD -> Integer.class;
            default -> String.class;
        };
    }

    /** @param text trimmed, not empty */
    Object read(String text) {
        return reader.apply(text);
    }

    private static String code(String text) {
        String upper = text.toUpperCase(Locale.ROOT);
        if (!CODE_FORM.matcher(upper).matches()) {
            throw new IllegalArgumentException("a code is 1 to 30 of A-Z 0-9 . _ -; read '" + text + "'");
        }
        return upper;
    }

    private static String prefix(String text) {
        String upper = text.toUpperCase(Locale.ROOT);
        if (!PREFIX_FORM.matcher(upper).matches()) {
            throw new IllegalArgumentException(
                    "what serials begin with is 1 to 40 of A-Z 0-9 - . /; read '" + text + "'");
        }
        return upper;
    }

    private static String bounded(String text, int most) {
        if (text.length() > most || text.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException(
                    "a text of 1 to " + most + " characters is required; read '" + text + "'");
        }
        return text;
    }

    private static <E> String known(String text, E[] all, Function<E, String> id) {
        return Arrays.stream(all)
                .map(id)
                .filter(one -> one.equalsIgnoreCase(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("one of "
                        + Arrays.stream(all).map(id).collect(Collectors.joining(", ")) + " is meant; read '" + text
                        + "'"));
    }

    private static Double number(String text, double least, double most, String unit) {
        String plain = text.replace(',', '.');
        if (NUMBER_FORM.matcher(plain).matches()) {
            double value = Double.parseDouble(plain);
            if (value >= least && value <= most) {
                return value;
            }
        }
        throw new IllegalArgumentException("a number from " + Math.round(least) + " to " + Math.round(most) + " " + unit
                + " is meant; read '" + text + "'");
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a date such as 2026-03-04 is required; read '" + text + "'", e);
        }
    }

    private static LocalDate month(String text) {
        try {
            return YearMonth.parse(text).atDay(1);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("a month such as 2026-03 is required; read '" + text + "'", e);
        }
    }

    private static Integer whole(String text, int least) {
        if (!WHOLE_FORM.matcher(text).matches() || Integer.parseInt(text) < least) {
            throw new IllegalArgumentException(
                    "a whole number of " + least + " or more is required; read '" + text + "'");
        }
        return Integer.valueOf(text);
    }
}
