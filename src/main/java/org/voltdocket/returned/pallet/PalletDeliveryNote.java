package org.voltdocket.returned.pallet;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ReturnErrors;

/**
 * The delivery note of a pallet.
 *
 * @param serials in the order of the list, none twice
 */
public record PalletDeliveryNote(String number, String sender, LocalDate arrivedOn, List<BatterySerial> serials) {

    private static final int MOST_LINES = 5000;
    private static final int MOST_SENDER = 200;
    private static final String HEAD = "(?i)\\s*\"?(battery[ _-]?)?serial( number)?\"?\\s*";

    /**
     * Reads a form: the list has one serial a line, or a table (comma, semicolon or tab) with the serial in its first column; a
     * first line that names the column is passed over, and so are blank lines.
     *
     * @param arrivedOn ISO 8601 date; blank for today
     * @throws RequestException (400) with every invalid member and line
     */
    public static PalletDeliveryNote parse(
            String number, String sender, String arrivedOn, String list, LocalDate today) {
        List<FieldError> errors = new ArrayList<>();
        String no = number == null ? "" : number.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        if (!no.matches("[A-Z0-9./-]{1,40}")) {
            errors.add(new FieldError(
                    "number", "'number' of the pallet is 1 to 40 of the characters A-Z 0-9 - . /; read '" + no + "'"));
        }
        String from = sender == null ? "" : sender.strip();
        if (from.isEmpty() || from.length() > MOST_SENDER) {
            errors.add(new FieldError("sender", "'sender' says in 1 to 200 characters who sent the pallet"));
        }
        LocalDate day = day(arrivedOn, today, errors);
        List<BatterySerial> serials = serials(list == null ? "" : list, errors);
        if (!errors.isEmpty()) {
            throw ReturnErrors.invalid(errors);
        }
        return new PalletDeliveryNote(no, from, day, serials);
    }

    private static LocalDate day(String text, LocalDate today, List<FieldError> errors) {
        try {
            LocalDate day = text == null || text.isBlank() ? today : LocalDate.parse(text.strip());
            if (!day.isAfter(today)) {
                return day;
            }
            errors.add(new FieldError("arrivedOn", "'arrivedOn' is today or earlier; read " + day));
        } catch (DateTimeParseException e) {
            errors.add(new FieldError("arrivedOn", "'arrivedOn' is a date such as 2026-03-04; read '" + text + "'"));
        }
        return null;
    }

    private static List<BatterySerial> serials(String list, List<FieldError> errors) {
        Map<BatterySerial, Integer> lines = new LinkedHashMap<>();
        String[] rows = list.replace("\ufeff", "").split("\\R", -1);
        for (int i = 0; i < rows.length; i++) {
            String cell = rows[i].split("[,;\t]", 2)[0].strip().replaceAll("^\"|\"$", "");
            if (cell.isBlank() || lines.isEmpty() && cell.matches(HEAD)) {
                continue;
            }
            try {
                Integer before = lines.putIfAbsent(BatterySerial.parse(cell), i + 1);
                if (before != null) {
                    errors.add(new FieldError("list", "line " + (i + 1) + " repeats line " + before + ": " + cell));
                }
            } catch (IllegalArgumentException e) {
                errors.add(new FieldError("list", "line " + (i + 1) + ": " + e.getMessage()));
            }
        }
        if (lines.isEmpty() && errors.stream().noneMatch(one -> one.field().equals("list"))) {
            errors.add(new FieldError("list", "the list names no battery; write one serial a line"));
        }
        if (lines.size() > MOST_LINES) {
            errors.add(new FieldError("list", "a pallet lists 5000 batteries at most; read " + lines.size()));
        }
        return List.copyOf(lines.keySet());
    }
}
