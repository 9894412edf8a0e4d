package org.voltdocket.warranty;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;

/** Terms that an administrator wants to record, as typed and found right. */
public record WarrantyTermsForm(
        Optional<String> batteryType,
        Optional<Chemistry> chemistry,
        UseClass use,
        LocalDate validFrom,
        int freeMonths,
        List<ProRata> proRata,
        Optional<Integer> mileageKm,
        String reason) {

    private static final Pattern TYPE = Pattern.compile("[A-Z0-9._/-]{1,40}");
    private static final Pattern ROW =
            Pattern.compile("\\s*(\\d{1,3})\\s*[:;\\s]\\s*(\\d{1,2}(?:[.,]\\d{1,2})?)\\s*%?\\s*");
    private static final int MOST_FREE = 120;
    private static final int MOST_MONTHS = 240;
    private static final int MOST_KM = 3_000_000;

    public WarrantyTermsForm {
        proRata = List.copyOf(proRata);
    }

    /** A form's fields. */
    public record Form(
            String batteryType,
            String chemistry,
            String use,
            String validFrom,
            String freeMonths,
            String proRata,
            String mileageKm,
            String reason) {}

    /**
     * Reads a form. The pro-rata table has one row a line: last month, blank or colon, per cent, such as {@code 36: 50}.
     *
     * @throws RequestException if a field cannot be right
     */
    public static WarrantyTermsForm read(Form form) {
        String type = text(form.batteryType()).toUpperCase(Locale.ROOT);
        if (!type.isEmpty() && !TYPE.matcher(type).matches()) {
            throw RequestException.invalid(
                    "terms-refused",
                    "batteryType",
                    "A type's code has 1 to 40 of A-Z 0-9 - . _ /; read '" + type + "'.");
        }
        int free = number("freeMonths", form.freeMonths(), 0, MOST_FREE);
        String reason = FreeText.required("terms-refused", "reason", form.reason(), "states why the terms are these");
        return new WarrantyTermsForm(
                Optional.of(type).filter(code -> !code.isEmpty()),
                type.isEmpty() ? Optional.of(chemistry(form.chemistry())) : Optional.empty(),
                use(form.use()),
                day(form.validFrom()),
                free,
                table(text(form.proRata()), free),
                text(form.mileageKm()).isEmpty()
                        ? Optional.empty()
                        : Optional.of(number("mileageKm", form.mileageKm(), 1, MOST_KM)),
                reason);
    }

    private static List<ProRata> table(String text, int free) {
        List<ProRata> rows = new ArrayList<>();
        int month = free;
        BigDecimal percent = BigDecimal.valueOf(100);
        int line = 0;
        for (String row : text.split("\\R")) {
            line++;
            if (row.isBlank()) {
                continue;
            }
            Matcher cells = ROW.matcher(row);
            if (!cells.matches()) {
                throw wrong(line, "is a last month and per cent, such as 36: 50; read '" + row.strip() + "'");
            }
            int through = Integer.parseInt(cells.group(1));
            BigDecimal paid = new BigDecimal(cells.group(2).replace(',', '.'));
            if (through <= month || through > MOST_MONTHS) {
                throw wrong(line, "names a month after " + month + " and up to " + MOST_MONTHS + "; read " + through);
            }
            if (paid.signum() == 0 || paid.compareTo(percent) >= 0) {
                throw wrong(
                        line,
                        "pays less than " + percent.toPlainString() + " % and more than nothing; read "
                                + paid.toPlainString());
            }
            rows.add(new ProRata(through, paid));
            month = through;
            percent = paid;
        }
        return rows;
    }

    private static RequestException wrong(int line, String what) {
        return RequestException.invalid(
                "terms-refused", "proRata", "Line " + line + " of the pro-rata table " + what + ".");
    }

    private static Chemistry chemistry(String id) {
        try {
            return Chemistry.of(text(id));
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid(
                    "terms-refused",
                    "chemistry",
                    "Name a battery type, or choose the chemistry that the terms are for.");
        }
    }

    private static UseClass use(String id) {
        try {
            return UseClass.of(text(id));
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid("terms-refused", "use", "Choose the use: " + e.getMessage());
        }
    }

    private static LocalDate day(String text) {
        try {
            LocalDate day = LocalDate.parse(text(text));
            if (day.getYear() >= 1990 && day.getYear() < 2100) {
                return day;
            }
        } catch (DateTimeParseException e) {
            // said below
        }
        throw RequestException.invalid(
                "terms-refused",
                "validFrom",
                "The first day of sale is a date such as 2026-01-31, from 1990 on; read '" + text(text) + "'.");
    }

    private static int number(String field, String text, int least, int most) {
        String digits = text(text).replaceAll("[\\s\\u202f]", "");
        if (digits.matches("\\d{1,7}")) {
            int value = Integer.parseInt(digits);
            if (value >= least && value <= most) {
                return value;
            }
        }
        throw RequestException.invalid(
                "terms-refused",
                field,
                "A whole number from " + least + " to " + most + " is needed; read '" + text(text) + "'.");
    }

    private static String text(String given) {
        return given == null ? "" : given.strip();
    }
}
