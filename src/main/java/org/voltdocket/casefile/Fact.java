package org.voltdocket.casefile;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;
import tools.jackson.databind.JsonNode;

/**
 * Every fact of a case: its name in JSON, what values it may have, and where it sits in {@link Facts}. Reading,
 * conflicts, merge patches, the trail and the canonical text all walk this one list.
 */
enum Fact {
    CHEMISTRY("battery.chemistry", oneOf(Chemistry::of), f -> f.battery().chemistry()),
    CAPACITY("battery.capacityAh", number(1, 400, "Ah"), f -> f.battery().capacityAh()),
    RATED_CRANKING(
            "battery.ratedCrankingA", number(20, 3000, "A"), f -> f.battery().ratedCrankingA()),
    CRANKING_STANDARD(
            "battery.crankingStandard",
            oneOf(CrankingStandard::of),
            f -> f.battery().crankingStandard()),
    PRODUCED_ON("battery.producedOn", Fact::date, f -> f.battery().producedOn()),
    SOLD_ON("battery.soldOn", Fact::date, f -> f.battery().soldOn()),
    FITTED_ON("battery.fittedOn", Fact::date, f -> f.battery().fittedOn()),
    FITTED_ODOMETER(
            "battery.fittedOdometerKm",
            number(0, 3_000_000, "km"),
            f -> f.battery().fittedOdometerKm()),
    CHARGING_CONTROL(
            "vehicle.chargingControl",
            oneOf(ChargingControl::of),
            f -> f.vehicle().chargingControl()),
    STOP_START("vehicle.stopStart", Fact::truth, f -> f.vehicle().stopStart()),
    REQUIRED_CHEMISTRY(
            "vehicle.requiredChemistry", oneOf(Chemistry::of), f -> f.vehicle().requiredChemistry()),
    REQUIRED_CAPACITY(
            "vehicle.requiredCapacityAh", number(1, 400, "Ah"), f -> f.vehicle().requiredCapacityAh()),
    ODOMETER("vehicle.odometerKm", number(0, 3_000_000, "km"), f -> f.vehicle().odometerKm()),
    COMPLAINT("complaint", Fact::text, Facts::complaint),
    REPLACED_BEFORE("batteriesReplacedBefore", Fact::count, Facts::batteriesReplacedBefore);

    /** Longest complaint, characters. */
    static final int MAX_TEXT = 4000;

    private static final int MAX_REPLACED = 20;

    private final String path;
    private final Function<JsonNode, Object> reader;
    private final Function<Facts, Object> getter;

    Fact(String path, Function<JsonNode, Object> reader, Function<Facts, Object> getter) {
        this.path = path;
        this.reader = reader;
        this.getter = getter;
    }

    /** Dotted name, as in {@code battery.capacityAh}. */
    String path() {
        return path;
    }

    /** Group of the name: {@code battery}, {@code vehicle} or empty. */
    String group() {
        int dot = path.indexOf('.');
        return dot < 0 ? "" : path.substring(0, dot);
    }

    /** Name within its group. */
    String member() {
        return path.substring(path.indexOf('.') + 1);
    }

    /** @throws IllegalArgumentException saying what a right value is */
    Object read(JsonNode value) {
        return reader.apply(value);
    }

    /** Its value, null where not known. */
    Object of(Facts facts) {
        return getter.apply(facts);
    }

    /** What is known, in the order of this list. */
    static Map<Fact, Object> known(Facts facts) {
        Map<Fact, Object> known = new EnumMap<>(Fact.class);
        for (Fact fact : values()) {
            Object value = fact.of(facts);
            if (value != null) {
                known.put(fact, value);
            }
        }
        return Collections.unmodifiableMap(known);
    }

    static Facts facts(Map<Fact, Object> known) {
        return new Facts(
                new Facts.BatteryFacts(
                        (Chemistry) known.get(CHEMISTRY),
                        (Double) known.get(CAPACITY),
                        (Double) known.get(RATED_CRANKING),
                        (CrankingStandard) known.get(CRANKING_STANDARD),
                        (LocalDate) known.get(PRODUCED_ON),
                        (LocalDate) known.get(SOLD_ON),
                        (LocalDate) known.get(FITTED_ON),
                        (Double) known.get(FITTED_ODOMETER)),
                new Facts.VehicleFacts(
                        (ChargingControl) known.get(CHARGING_CONTROL),
                        (Boolean) known.get(STOP_START),
                        (Chemistry) known.get(REQUIRED_CHEMISTRY),
                        (Double) known.get(REQUIRED_CAPACITY),
                        (Double) known.get(ODOMETER)),
                (String) known.get(COMPLAINT),
                (Integer) known.get(REPLACED_BEFORE));
    }

    /** The value as JSON, the trail and messages write it: identifier, ISO date, number, truth or text. */
    static Object plain(Object value) {
        if (value instanceof Chemistry c) {
            return c.id();
        }
        if (value instanceof CrankingStandard c) {
            return c.id();
        }
        if (value instanceof ChargingControl c) {
            return c.id();
        }
        if (value instanceof LocalDate d) {
            return d.toString();
        }
        if (value instanceof Double d && d == Math.rint(d)) {
            return d.longValue();
        }
        return value;
    }

    private static Function<JsonNode, Object> oneOf(Function<String, Object> of) {
        return json -> of.apply(string(json));
    }

    private static Function<JsonNode, Object> number(double least, double most, String unit) {
        String range = plain(least) + " to " + plain(most) + " " + unit;
        return json -> {
            if (!json.isNumber()) {
                throw new IllegalArgumentException("is a number, " + range + "; read " + json + ".");
            }
            double value = json.doubleValue();
            if (!(value >= least && value <= most)) {
                throw new IllegalArgumentException("is " + range + "; read " + json + ".");
            }
            return value + 0.0; // no negative zero
        };
    }

    private static Object date(JsonNode json) {
        try {
            return LocalDate.parse(string(json));
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("is a day such as 2025-08-01; read " + json + ".");
        }
    }

    private static Object truth(JsonNode json) {
        if (!json.isBoolean()) {
            throw new IllegalArgumentException("is true or false; read " + json + ".");
        }
        return json.booleanValue();
    }

    private static Object count(JsonNode json) {
        if (!json.isNumber() || json.doubleValue() != Math.rint(json.doubleValue())) {
            throw new IllegalArgumentException("is a whole number, 0 to " + MAX_REPLACED + "; read " + json + ".");
        }
        double value = json.doubleValue();
        if (!(value >= 0 && value <= MAX_REPLACED)) {
            throw new IllegalArgumentException("is 0 to " + MAX_REPLACED + "; read " + json + ".");
        }
        return (int) value;
    }

    private static Object text(JsonNode json) {
        String text = string(json).strip();
        if (text.length() > MAX_TEXT) {
            throw new IllegalArgumentException("has at most " + MAX_TEXT + " characters; read " + text.length() + ".");
        }
        if (text.indexOf('\0') >= 0) {
            throw new IllegalArgumentException("is text; it holds a NUL character.");
        }
        return text.isEmpty() ? null : text;
    }

    private static String string(JsonNode json) {
        if (!json.isString()) {
            throw new IllegalArgumentException("is a text in quotes; read " + json + ".");
        }
        return json.stringValue();
    }
}
