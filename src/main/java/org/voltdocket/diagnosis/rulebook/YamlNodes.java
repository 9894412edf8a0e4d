package org.voltdocket.diagnosis.rulebook;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Reads values of a YAML tree; errors name the place of the value. */
final class YamlNodes {

    private YamlNodes() {}

    static IllegalArgumentException refused(String place, String why) {
        return new IllegalArgumentException(place + ": " + why);
    }

    static Map<?, ?> map(Object node, String place) {
        if (node instanceof Map<?, ?> map) {
            return map;
        }
        throw refused(place, "members expected, found " + node + ".");
    }

    static List<?> list(Object node, String place) {
        if (node instanceof List<?> list) {
            return list;
        }
        throw refused(place, "a list expected, found " + node + ".");
    }

    /** A text that is there and not blank; a number is none, for YAML drops its last zeros. */
    static String text(Map<?, ?> members, String name, String place) {
        Object value = members.get(name);
        if (value == null || value.toString().isBlank()) {
            throw refused(place + "." + name, "missing.");
        }
        if (!(value instanceof String text)) {
            throw refused(place + "." + name, "a text expected, found " + value + "; put it in quotes.");
        }
        return text.strip();
    }

    static double number(Object node, String place) {
        if (node instanceof Number number && Double.isFinite(number.doubleValue())) {
            return number.doubleValue();
        }
        throw refused(place, "a number expected, found " + node + ".");
    }

    static void known(Map<?, ?> members, Set<String> names, String place) {
        for (Object key : members.keySet()) {
            if (!names.contains(String.valueOf(key))) {
                throw refused(place, "unknown member '" + key + "'.");
            }
        }
    }

    /** A constant by its identifier. */
    static <E> E named(Object node, Function<String, E> of, String place) {
        try {
            return of.apply(String.valueOf(node));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(place + ": " + e.getMessage(), e);
        }
    }

    static <E extends Enum<E>> Map<E, Double> byEnum(Object node, Class<E> type, Function<String, E> of, String place) {
        Map<E, Double> out = new EnumMap<>(type);
        map(node, place).forEach((key, value) -> out.put(named(key, of, place), number(value, place + "." + key)));
        return out;
    }
}
