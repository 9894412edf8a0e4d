package org.voltdocket.casefile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.Vin;
import tools.jackson.databind.JsonNode;

/** Reads keys and facts from JSON; collects everything that is wrong before it refuses. */
final class FactsParser {

    private static final String SERIAL = "batterySerial";
    private static final String VIN = "vin";

    private final List<FieldError> errors = new ArrayList<>();
    private final List<String> ignored = new ArrayList<>();
    /** What was set; a fact mapped to null was removed. */
    private final Map<Fact, Object> told = new EnumMap<>(Fact.class);

    private Optional<Vin> suggestion = Optional.empty();

    private FactsParser() {}

    /**
     * A merge patch as read.
     *
     * @param told what it sets; a fact mapped to null is removed
     */
    record Patch(Map<Fact, Object> told, List<String> ignored) {}

    /** Reads a request to open a case; a member that is null is as good as absent. */
    static CaseRequest request(JsonNode json) {
        FactsParser reader = new FactsParser();
        reader.object(json);
        BatterySerial serial = reader.key(json, SERIAL, BatterySerial::parse);
        Vin vin = reader.key(json, VIN, Vin::parse);
        reader.members(json, true);
        reader.refuseIfWrong();
        return new CaseRequest(new NewCase(serial, vin, Fact.facts(reader.told)), List.copyOf(reader.ignored));
    }

    /**
     * Reads a merge patch: what it sets, and, mapped to null, what it removes. A group that is null removes all its
     * members.
     */
    static Patch patch(JsonNode json, CaseReference ref) {
        FactsParser reader = new FactsParser();
        reader.object(json);
        reader.sameKey(json, SERIAL, ref.serial(), BatterySerial::parse);
        reader.sameKey(json, VIN, ref.vin(), Vin::parse);
        reader.members(json, false);
        reader.refuseIfWrong();
        return new Patch(reader.told, List.copyOf(reader.ignored));
    }

    private void object(JsonNode json) {
        if (json == null || !json.isObject()) {
            errors.add(new FieldError("", "The request is a JSON object."));
            refuseIfWrong();
        }
    }

    private <K> K key(JsonNode json, String name, Function<String, K> parse) {
        JsonNode value = json.get(name);
        if (value == null || value.isNull()) {
            errors.add(new FieldError(name, "'" + name + "' is missing: a case is one battery in one vehicle."));
            return null;
        }
        if (!value.isString()) {
            errors.add(new FieldError(name, "'" + name + "' is a text in quotes; read " + value + "."));
            return null;
        }
        try {
            return parse.apply(value.stringValue());
        } catch (IllegalArgumentException e) {
            errors.add(new FieldError(name, e.getMessage()));
            if (name.equals(VIN)) {
                suggestion = Vin.suggestion(value.stringValue());
            }
            return null;
        }
    }

    private <K> void sameKey(JsonNode json, String name, K known, Function<String, K> parse) {
        if (!json.has(name)) {
            return;
        }
        JsonNode value = json.get(name);
        try {
            if (value.isString() && parse.apply(value.stringValue()).equals(known)) {
                return;
            }
        } catch (IllegalArgumentException e) {
            // another key either way: refused below
        }
        errors.add(new FieldError(
                name,
                "'" + name + "' is a key and stays " + known
                        + ". If it was misread, open the case of the right pair."));
    }

    private void members(JsonNode json, boolean nullIsAbsent) {
        json.properties().forEach(member -> {
            String name = member.getKey();
            JsonNode value = member.getValue();
            if (name.equals(SERIAL) || name.equals(VIN)) {
                return;
            }
            boolean group = name.equals("battery") || name.equals("vehicle");
            if (!group) {
                fact("", name, value);
            } else if (value.isNull()) {
                remove(name);
            } else if (!value.isObject()) {
                errors.add(new FieldError(name, "'" + name + "' is a JSON object; read " + value + "."));
            } else {
                value.properties().forEach(inner -> fact(name, inner.getKey(), inner.getValue()));
            }
        });
        if (nullIsAbsent) {
            told.values().removeIf(v -> v == null);
        }
    }

    private void remove(String group) {
        for (Fact fact : Fact.values()) {
            if (fact.group().equals(group)) {
                told.put(fact, null);
            }
        }
    }

    private void fact(String group, String member, JsonNode value) {
        String path = group.isEmpty() ? member : group + "." + member;
        for (Fact fact : Fact.values()) {
            if (fact.path().equals(path)) {
                read(fact, value);
                return;
            }
        }
        ignored.add(path);
    }

    private void read(Fact fact, JsonNode value) {
        try {
            told.put(fact, value.isNull() ? null : fact.read(value));
        } catch (IllegalArgumentException e) {
            String text = e.getMessage();
            errors.add(new FieldError(
                    fact.path(), text.startsWith("'") ? fact.path() + ": " + text : "'" + fact.path() + "' " + text));
        }
    }

    private void refuseIfWrong() {
        if (!errors.isEmpty()) {
            throw new InvalidFactsException(errors, suggestion);
        }
    }
}
