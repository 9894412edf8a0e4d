package org.voltdocket.diagnosis.read;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;
import tools.jackson.core.io.JsonStringEncoder;

/**
 * Every fact of a case: its name in JSON, its permitted values, and its place in {@link Facts}. Parsing, conflicts, merge
 * patches, the trail and the digest of an assessment's input all use this list.
 *
 * <p>JSON values are {@code String}, {@code Number}, {@code Boolean}, {@code Map}, {@code List} or null.
 */
public enum Fact {
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
    STOP_START("vehicle.stopStart", Fact::flag, f -> f.vehicle().stopStart()),
    REQUIRED_CHEMISTRY(
            "vehicle.requiredChemistry", oneOf(Chemistry::of), f -> f.vehicle().requiredChemistry()),
    REQUIRED_CAPACITY(
            "vehicle.requiredCapacityAh", number(1, 400, "Ah"), f -> f.vehicle().requiredCapacityAh()),
    ODOMETER("vehicle.odometerKm", number(0, 3_000_000, "km"), f -> f.vehicle().odometerKm()),
    COMPLAINT("complaint", Fact::complaint, Facts::complaint),
    REPLACED_BEFORE("batteriesReplacedBefore", Fact::count, Facts::batteriesReplacedBefore);

    /** Longest complaint, characters. */
    public static final int MAX_TEXT = 4000;

    private static final int MAX_REPLACED = 20;

    private final String path;
    private final Function<Object, Object> reader;
    private final Function<Facts, Object> getter;

    Fact(String path, Function<Object, Object> reader, Function<Facts, Object> getter) {
        this.path = path;
        this.reader = reader;
        this.getter = getter;
    }

    /** Dotted name, as in {@code battery.capacityAh}. */
    public String path() {
        return path;
    }

    /** Group of the name: {@code battery}, {@code vehicle} or empty. */
    public String group() {
        int dot = path.indexOf('.');
        return dot < 0 ? "" : path.substring(0, dot);
    }

    /** Name within its group. */
    public String member() {
        return path.substring(path.indexOf('.') + 1);
    }

    /**
     * Converts a JSON value to the value of this fact.
     *
     * @throws IllegalArgumentException whose message names the permitted values
     */
    Object read(Object value) {
        return reader.apply(value);
    }

    /** The value in these facts; null if not known. */
    public Object of(Facts facts) {
        return getter.apply(facts);
    }

    /** The known facts, in the order of this list. */
    public static Map<Fact, Object> known(Facts facts) {
        Map<Fact, Object> known = new EnumMap<>(Fact.class);
        for (Fact fact : values()) {
            Object value = fact.of(facts);
            if (value != null) {
                known.put(fact, value);
            }
        }
        return Collections.unmodifiableMap(known);
    }

    /** Facts from their values; a fact without a value is not known. */
    public static Facts facts(Map<Fact, Object> known) {
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

    /** The value as written in JSON, in the trail and in messages: identifier, ISO date, number, boolean or text. */
    public static Object plain(Object value) {
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

    private static Function<Object, Object> oneOf(Function<String, Object> of) {
        return json -> of.apply(string(json));
    }

    private static Function<Object, Object> number(double least, double most, String unit) {
        String range = plain(least) + " to " + plain(most) + " " + unit;
        return json -> {
            if (!(json instanceof Number number)) {
                throw new IllegalArgumentException("is a number, " + range + "; read " + text(json) + ".");
            }
            double value = number.doubleValue();
            if (!(value >= least && value <= most)) {
                throw new IllegalArgumentException("is " + range + "; read " + json + ".");
            }
            return value + 0.0; // no negative zero
        };
    }

    private static Object date(Object json) {
        try {
            return LocalDate.parse(string(json));
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("is a day such as 2025-08-01; read " + text(json) + ".");
        }
    }

    private static Object flag(Object json) {
        if (!(json instanceof Boolean)) {
            throw new IllegalArgumentException("is true or false; read " + text(json) + ".");
        }
        return json;
    }

    private static Object count(Object json) {
        if (!(json instanceof Number number) || number.doubleValue() != Math.rint(number.doubleValue())) {
            throw new IllegalArgumentException(
                    "is a whole number, 0 to " + MAX_REPLACED + "; read " + text(json) + ".");
        }
        double value = number.doubleValue();
        if (!(value >= 0 && value <= MAX_REPLACED)) {
            throw new IllegalArgumentException("is 0 to " + MAX_REPLACED + "; read " + json + ".");
        }
        return (int) value;
    }

    private static Object complaint(Object json) {
        String text = string(json).strip();
        if (text.length() > MAX_TEXT) {
            throw new IllegalArgumentException("has at most " + MAX_TEXT + " characters; read " + text.length() + ".");
        }
        if (text.indexOf('\0') >= 0) {
            throw new IllegalArgumentException("is text; it holds a NUL character.");
        }
        return text.isEmpty() ? null : text;
    }

    private static String string(Object json) {
        if (!(json instanceof String string)) {
            throw new IllegalArgumentException("is a text in quotes; read " + text(json) + ".");
        }
        return string;
    }

    /** The JSON text of a value, for messages. */
    static String text(Object json) {
        if (json instanceof String string) {
            return '"' + new String(JsonStringEncoder.getInstance().quoteAsCharArray(string)) + '"';
        }
        if (json instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(member -> text(member.getKey()) + ":" + text(member.getValue()))
                    .collect(Collectors.joining(",", "{", "}"));
        }
        if (json instanceof List<?> list) {
            return list.stream().map(Fact::text).collect(Collectors.joining(",", "[", "]"));
        }
        return String.valueOf(json);
    }
}
