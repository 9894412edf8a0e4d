package org.voltdocket.dossier.testing;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.read.FileError;
import org.voltdocket.diagnosis.read.PlausibleRange;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.read.TestRecordReader;
import org.voltdocket.kernel.Actor;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * A test record made from a form: one JSON object without blanks, members in the order of the form, numbers in their shortest
 * form. The same values of the same person give the same bytes.
 *
 * @param content empty where there are errors
 * @param errors by field; a field that is empty here means the form as a whole
 */
record TypedRecord(byte[] content, String fileName, Map<String, Problem> errors) {

    static final String TAKEN_AT = "takenAt";
    static final String OFFSET = "offset";
    static final String INSTRUMENT_SERIAL = "instrument.serial";
    static final String CALIBRATED_ON = "instrument.calibratedOn";

    private static final String DIGITS = "[+-]?(\\d{1,9}([.]\\d{0,9})?|[.]\\d{1,9})";

    /**
     * What is wrong with a field.
     *
     * @param code a message code with the arguments, or null where {@code text} says it
     */
    record Problem(String code, List<Object> arguments, String text) {

        static Problem coded(String code, Object... arguments) {
            return new Problem(code, List.of(arguments), null);
        }

        static Problem said(String text) {
            return new Problem(null, List.of(), text);
        }
    }

    /** @param given the fields of the form, {@code takenAt} as local date and time, {@code offset} its offset from UTC */
    static TypedRecord of(TestForm form, Map<String, String> given, Actor actor, Instant now) {
        Map<String, Problem> errors = new LinkedHashMap<>();
        ObjectNode json = JsonMapper.shared().createObjectNode();
        json.put("kind", form.kind().id());
        OffsetDateTime takenAt = takenAt(given, errors);
        json.put(TAKEN_AT, takenAt == null ? null : DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(takenAt));
        form.fields()
                .forEach(field ->
                        put(json, field, given.getOrDefault(field.name(), "").strip(), errors));
        instrument(json, given);
        json.put("origin", "typed").put("enteredBy", actor.user());
        if (form == TestForm.CHARGING && !json.has("idleVoltageV") && !json.has("loadedVoltageV")) {
            errors.putIfAbsent("idleVoltageV", Problem.coded("typed.one-voltage"));
        }
        byte[] content = JsonMapper.shared().writeValueAsBytes(json);
        if (errors.isEmpty() && new TestRecordReader(now).read(content) instanceof RejectedFile rejected) {
            rejected.errors().forEach(error -> errors.putIfAbsent(field(error), Problem.said(error.message())));
        }
        String name = form.kind().id()
                + (takenAt == null
                        ? ""
                        : DateTimeFormatter.ofPattern("-yyyy-MM-dd-HHmm").format(takenAt))
                + ".json";
        return new TypedRecord(errors.isEmpty() ? content : new byte[0], name, errors);
    }

    /** A decimal number with point or comma; empty where it is none. */
    static Optional<BigDecimal> number(String text) {
        String plain = text.replaceAll("[\\s\\u00a0\\u2009\\u202f]", "")
                .replace('−', '-')
                .replace(',', '.');
        return plain.matches(DIGITS) ? Optional.of(new BigDecimal(plain)) : Optional.empty();
    }

    private static void put(ObjectNode json, TestForm.Field field, String text, Map<String, Problem> errors) {
        if (text.isEmpty()) {
            if (field.required()) {
                errors.put(field.name(), Problem.coded("typed.required"));
            }
        } else if (field.isNumber()) {
            number(json, field, text, errors);
        } else if (!field.choices().contains(text)) {
            errors.put(field.name(), Problem.coded("typed.choice"));
        } else if (field.words().equals("yes-no")) {
            json.put(field.name(), text.equals("true"));
        } else {
            json.put(field.name(), text);
        }
    }

    private static void number(ObjectNode json, TestForm.Field field, String text, Map<String, Problem> errors) {
        PlausibleRange range = field.range();
        Optional<BigDecimal> number = number(text);
        if (number.isEmpty()) {
            errors.put(field.name(), Problem.coded("typed.number", shown(text)));
        } else if (!range.holds(number.get().doubleValue())) {
            errors.put(
                    field.name(),
                    Problem.coded("typed.range", shown(text), plain(range.low()), plain(range.high()), range.unit()));
        } else {
            json.put(
                    field.name(),
                    new BigDecimal(number.get().stripTrailingZeros().toPlainString()));
        }
    }

    private static OffsetDateTime takenAt(Map<String, String> given, Map<String, Problem> errors) {
        try {
            ZoneOffset offset = ZoneOffset.of(given.getOrDefault(OFFSET, "Z"));
            LocalDateTime local = LocalDateTime.parse(given.getOrDefault(TAKEN_AT, ""));
            return local.truncatedTo(ChronoUnit.SECONDS).atOffset(offset);
        } catch (DateTimeException e) {
            errors.put(TAKEN_AT, Problem.coded("typed.moment"));
            return null;
        }
    }

    private static void instrument(ObjectNode json, Map<String, String> given) {
        String serial = given.getOrDefault(INSTRUMENT_SERIAL, "").strip();
        String calibrated = given.getOrDefault(CALIBRATED_ON, "").strip();
        if (serial.isEmpty() && calibrated.isEmpty()) {
            return;
        }
        ObjectNode instrument = json.putObject("instrument");
        if (!serial.isEmpty()) {
            instrument.put("serial", serial);
        }
        if (!calibrated.isEmpty()) {
            instrument.put("calibratedOn", calibrated);
        }
    }

    /** The field that an error of the reader names first. */
    private static String field(FileError error) {
        return error.message().split(" ", 2)[0];
    }

    /** A bound without needless decimals. */
    static String plain(double bound) {
        return new BigDecimal(Double.toString(bound))
                .stripTrailingZeros()
                .toPlainString()
                .replace('-', '−');
    }

    private static String shown(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "…";
    }
}
