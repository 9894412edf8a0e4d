package org.voltdocket.casefile.web;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;

/** The facts of a case as fields of a form, named like the members of the JSON. */
public final class FactFields {

    private static final List<String> YES_NO = List.of("true", "false");

    /** Fields in the order of the form. */
    public static final List<Field> ALL = List.of(
            choice("battery.chemistry", "chemistry", ids(Chemistry.values(), Chemistry::id)),
            number("battery.capacityAh", "Ah"),
            number("battery.ratedCrankingA", "A"),
            choice(
                    "battery.crankingStandard",
                    "cranking-standard",
                    ids(CrankingStandard.values(), CrankingStandard::id)),
            date("battery.producedOn"),
            date("battery.soldOn"),
            date("battery.fittedOn"),
            number("battery.fittedOdometerKm", "km"),
            choice("vehicle.chargingControl", "charging-control", ids(ChargingControl.values(), ChargingControl::id)),
            choice("vehicle.stopStart", "yes-no", YES_NO),
            choice("vehicle.requiredChemistry", "chemistry", ids(Chemistry.values(), Chemistry::id)),
            number("vehicle.requiredCapacityAh", "Ah"),
            number("vehicle.odometerKm", "km"),
            number("batteriesReplacedBefore", ""),
            new Field("complaint", "complaint", Kind.TEXT, "", "", List.of()));

    private FactFields() {}

    /** How a fact is entered. */
    public enum Kind {
        NUMBER,
        DATE,
        CHOICE,
        TEXT
    }

    /**
     * One field.
     *
     * @param name dotted member name
     * @param id the name as an id on the page
     * @param unit empty where it has none
     * @param words message group of the choices
     * @param choices identifiers to choose from; empty but for {@link Kind#CHOICE}
     */
    public record Field(String name, String id, Kind kind, String unit, String words, List<String> choices) {

        /** Which part of the form it belongs to. */
        public String group() {
            int dot = name.indexOf('.');
            return dot < 0 ? "other" : name.substring(0, dot);
        }
    }

    /** What is known, as the form shows it; a fact that is not known is absent. */
    public static Map<String, String> values(Facts facts) {
        Facts.BatteryFacts battery = facts.battery();
        Facts.VehicleFacts vehicle = facts.vehicle();
        Map<String, String> values = new LinkedHashMap<>();
        put(values, "battery.chemistry", battery.chemistry(), Chemistry::id);
        put(values, "battery.capacityAh", battery.capacityAh(), FactFields::plain);
        put(values, "battery.ratedCrankingA", battery.ratedCrankingA(), FactFields::plain);
        put(values, "battery.crankingStandard", battery.crankingStandard(), CrankingStandard::id);
        put(values, "battery.producedOn", battery.producedOn(), Object::toString);
        put(values, "battery.soldOn", battery.soldOn(), Object::toString);
        put(values, "battery.fittedOn", battery.fittedOn(), Object::toString);
        put(values, "battery.fittedOdometerKm", battery.fittedOdometerKm(), FactFields::plain);
        put(values, "vehicle.chargingControl", vehicle.chargingControl(), ChargingControl::id);
        put(values, "vehicle.stopStart", vehicle.stopStart(), Object::toString);
        put(values, "vehicle.requiredChemistry", vehicle.requiredChemistry(), Chemistry::id);
        put(values, "vehicle.requiredCapacityAh", vehicle.requiredCapacityAh(), FactFields::plain);
        put(values, "vehicle.odometerKm", vehicle.odometerKm(), FactFields::plain);
        put(values, "batteriesReplacedBefore", facts.batteriesReplacedBefore(), Object::toString);
        put(values, "complaint", facts.complaint(), text -> text);
        return values;
    }

    private static <V> void put(Map<String, String> values, String name, V value, Function<V, String> text) {
        if (value != null) {
            values.put(name, text.apply(value));
        }
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    private static <E> List<String> ids(E[] all, Function<E, String> id) {
        return Arrays.stream(all).map(id).toList();
    }

    private static Field number(String name, String unit) {
        return new Field(name, name.replace('.', '-'), Kind.NUMBER, unit, "", List.of());
    }

    private static Field date(String name) {
        return new Field(name, name.replace('.', '-'), Kind.DATE, "", "", List.of());
    }

    private static Field choice(String name, String words, List<String> choices) {
        return new Field(name, name.replace('.', '-'), Kind.CHOICE, "", words, choices);
    }
}
