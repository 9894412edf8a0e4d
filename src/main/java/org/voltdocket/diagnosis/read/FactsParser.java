package org.voltdocket.diagnosis.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.Vin;

/** Parses the keys and facts of a case from JSON values (see {@link Fact}); collects all errors. */
public final class FactsParser {

    private static final String SERIAL = "batterySerial";
    private static final String VIN = "vin";
    private static final LocalDate EARLIEST = LocalDate.of(1950, 1, 1);

    private final List<FieldError> errors = new ArrayList<>();
    private final List<String> ignored = new ArrayList<>();
    private final Map<Fact, Object> values = new EnumMap<>(Fact.class);
    private BatterySerial serial;
    private Vin vin;
    private Optional<Vin> suggestion = Optional.empty();

    private FactsParser() {}

    /**
     * What was parsed.
     *
     * @param serial null in a merge patch or if it is missing or wrong
     * @param vin null in a merge patch or if it is missing or wrong
     * @param values in a merge patch a fact mapped to null is to be removed
     * @param ignored dotted names of unknown members
     * @param errors empty if everything is valid
     * @param suggestion the VIN that may have been misread
     */
    public record Parsed(
            BatterySerial serial,
            Vin vin,
            Map<Fact, Object> values,
            List<String> ignored,
            List<FieldError> errors,
            Optional<Vin> suggestion) {

        /** The facts that were set. */
        public Facts facts() {
            return Fact.facts(values);
        }
    }

    /** Parses a request to open a case. A member that is null counts as absent. */
    public static Parsed request(Object json) {
        FactsParser parser = new FactsParser();
        parser.object(json).ifPresent(members -> {
            parser.serial = parser.key(members, SERIAL, BatterySerial::parse);
            parser.vin = parser.key(members, VIN, Vin::parse);
            parser.members(members);
            parser.values.values().removeIf(value -> value == null);
        });
        return parser.parsed();
    }

    /**
     * Parses a merge patch (RFC 7396) of the case with these keys. A group that is null removes all its members.
     */
    public static Parsed patch(Object json, BatterySerial serial, Vin vin) {
        FactsParser parser = new FactsParser();
        parser.object(json).ifPresent(members -> {
            parser.sameKey(members, SERIAL, serial, BatterySerial::parse);
            parser.sameKey(members, VIN, vin, Vin::parse);
            parser.members(members);
        });
        return parser.parsed();
    }

    /**
     * Errors in days that are impossible: before 1950, more than a day ahead (clocks and time zones differ), sold or
     * fitted before produced. Fitted before sold is unusual but possible.
     */
    public static List<FieldError> impossibleDays(Facts facts, LocalDate today) {
        List<FieldError> errors = new ArrayList<>();
        for (Fact fact : List.of(Fact.PRODUCED_ON, Fact.SOLD_ON, Fact.FITTED_ON)) {
            LocalDate day = (LocalDate) fact.of(facts);
            if (day == null) {
                continue;
            }
            if (day.isBefore(EARLIEST)) {
                errors.add(new FieldError(fact.path(), "'" + fact.path() + "' is not before 1950; read " + day + "."));
            } else if (day.isAfter(today.plusDays(1))) {
                errors.add(new FieldError(fact.path(), "'" + fact.path() + "' is in the future; read " + day + "."));
            }
        }
        LocalDate produced = facts.battery().producedOn();
        for (Fact fact : List.of(Fact.SOLD_ON, Fact.FITTED_ON)) {
            LocalDate day = (LocalDate) fact.of(facts);
            if (produced != null && day != null && day.isBefore(produced)) {
                errors.add(new FieldError(
                        fact.path(),
                        "'" + fact.path() + "' is not before the battery was produced, " + produced + "; read " + day
                                + "."));
            }
        }
        return errors;
    }

    private Parsed parsed() {
        return new Parsed(serial, vin, values, List.copyOf(ignored), List.copyOf(errors), suggestion);
    }

    private Optional<Map<?, ?>> object(Object json) {
        if (json instanceof Map<?, ?> members) {
            return Optional.of(members);
        }
        errors.add(new FieldError("", "The request is a JSON object."));
        return Optional.empty();
    }

    private <K> K key(Map<?, ?> json, String name, Function<String, K> parse) {
        Object value = json.get(name);
        if (value == null) {
            errors.add(new FieldError(name, "'" + name + "' is missing: a case is one battery in one vehicle."));
            return null;
        }
        if (!(value instanceof String text)) {
            errors.add(new FieldError(name, "'" + name + "' is a text in quotes; read " + Fact.text(value) + "."));
            return null;
        }
        try {
            return parse.apply(text);
        } catch (IllegalArgumentException e) {
            errors.add(new FieldError(name, e.getMessage()));
            if (name.equals(VIN)) {
                suggestion = Vin.suggestion(text);
            }
            return null;
        }
    }

    private <K> void sameKey(Map<?, ?> json, String name, K known, Function<String, K> parse) {
        if (!json.containsKey(name)) {
            return;
        }
        try {
            if (json.get(name) instanceof String text && parse.apply(text).equals(known)) {
                return;
            }
        } catch (IllegalArgumentException e) {
            // no valid key, so another one: refused below
        }
        errors.add(new FieldError(
                name,
                "'" + name + "' is a key and stays " + known
                        + ". If it was misread, open the case of the right pair."));
    }

    private void members(Map<?, ?> json) {
        json.forEach((key, value) -> {
            String name = (String) key;
            if (name.equals(SERIAL) || name.equals(VIN)) {
                return;
            }
            boolean group = name.equals("battery") || name.equals("vehicle");
            if (!group) {
                fact("", name, value);
            } else if (value == null) {
                remove(name);
            } else if (value instanceof Map<?, ?> members) {
                members.forEach((inner, one) -> fact(name, (String) inner, one));
            } else {
                errors.add(new FieldError(name, "'" + name + "' is a JSON object; read " + Fact.text(value) + "."));
            }
        });
    }

    private void remove(String group) {
        for (Fact fact : Fact.values()) {
            if (fact.group().equals(group)) {
                values.put(fact, null);
            }
        }
    }

    private void fact(String group, String member, Object value) {
        String path = group.isEmpty() ? member : group + "." + member;
        for (Fact fact : Fact.values()) {
            if (fact.path().equals(path)) {
                read(fact, value);
                return;
            }
        }
        ignored.add(path);
    }

    private void read(Fact fact, Object value) {
        try {
            values.put(fact, value == null ? null : fact.read(value));
        } catch (IllegalArgumentException e) {
            String text = e.getMessage();
            errors.add(new FieldError(
                    fact.path(), text.startsWith("'") ? fact.path() + ": " + text : "'" + fact.path() + "' " + text));
        }
    }
}
