package org.voltdocket.diagnosis.rulebook;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.quantity.Table;
import org.voltdocket.kernel.Sha256;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.YAMLException;

/** Reads the YAML of an edition, refusing what is missing, unknown or doubled. */
final class RulebookFile {

    private static final Set<String> TOP = Set.of("edition", "issued", "startingOdds", "rules");
    private static final Set<String> ROW = Set.of(
            "id",
            "quantity",
            "atLeast",
            "atMost",
            "plausible",
            "unit",
            "source",
            "group",
            "control",
            "decides",
            "weights",
            "examples");

    private RulebookFile() {}

    static Rulebook parse(byte[] bytes) {
        LoaderOptions options = new LoaderOptions();
        options.setAllowDuplicateKeys(false);
        Object tree;
        try {
            tree = new Yaml(new SafeConstructor(options)).load(new ByteArrayInputStream(bytes));
        } catch (YAMLException e) {
            throw new IllegalArgumentException("The rule book is no YAML: " + e.getMessage(), e);
        }
        Map<?, ?> top = map(tree, "the rule book");
        known(top, TOP, "the rule book");
        Map<?, ?> odds = map(top.get("startingOdds"), "startingOdds");
        List<Rule> rules = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Object row : list(top.get("rules"), "rules")) {
            Rule rule = rule(map(row, "rules[" + rules.size() + "]"), "rules[" + rules.size() + "]");
            if (!ids.add(rule.id())) {
                throw new IllegalArgumentException("rules[" + rules.size() + "].id: '" + rule.id() + "' stands twice.");
            }
            rules.add(rule);
        }
        return new Rulebook(
                text(top, "edition", "the rule book"),
                Sha256.of(bytes),
                odds(map(odds.get("odds"), "startingOdds.odds")),
                text(odds, "source", "startingOdds"),
                List.copyOf(rules));
    }

    private static Map<Cause, Double> odds(Map<?, ?> members) {
        Map<Cause, Double> odds = byEnum(members, Cause.class, Cause::of, "startingOdds.odds");
        double sum = odds.values().stream().mapToDouble(Double::doubleValue).sum();
        if (odds.size() != Cause.values().length || Math.abs(sum - 1) > 1e-9) {
            throw new IllegalArgumentException(
                    "startingOdds.odds: every cause needs one, and they add to 1; they add to " + sum + ".");
        }
        return odds;
    }

    private static Rule rule(Map<?, ?> row, String place) {
        known(row, ROW, place);
        String id = text(row, "id", place);
        String here = place + " (" + id + ")";
        Map<?, ?> weights = map(row.get("weights"), here + ".weights");
        known(weights, Set.of("below", "inside", "above"), here + ".weights");
        Optional<Rule.Limit> low = limit(row.get("atLeast"), here + ".atLeast");
        Optional<Rule.Limit> high = limit(row.get("atMost"), here + ".atMost");
        if (low.isEmpty() && high.isEmpty()) {
            throw new IllegalArgumentException(here + ": a row has atLeast, atMost or both.");
        }
        Object control = row.get("control");
        Object decides = row.get("decides");
        return new Rule(
                id,
                text(row, "quantity", here),
                low,
                high,
                text(row, "unit", here),
                text(row, "source", here),
                text(row, "group", here),
                control == null
                        ? List.of()
                        : list(control, here + ".control").stream()
                                .map(c -> ChargingControl.of(c.toString()))
                                .toList(),
                decides == null
                        ? Rule.Decides.NOTHING
                        : Rule.Decides.valueOf(decides.toString().toUpperCase(Locale.ROOT)),
                weights(weights, "below", here),
                weights(weights, "inside", here),
                weights(weights, "above", here),
                range(row.get("plausible"), here + ".plausible"),
                examples(row, here));
    }

    private static Map<Cause, Double> weights(Map<?, ?> weights, String side, String place) {
        Object members = weights.get(side);
        return members == null
                ? Map.of()
                : byEnum(map(members, place + ".weights." + side), Cause.class, Cause::of, place + ".weights." + side);
    }

    private static List<Rule.Example> examples(Map<?, ?> row, String place) {
        List<Rule.Example> out = new ArrayList<>();
        for (Object one : list(row.get("examples"), place + ".examples")) {
            Map<?, ?> example = map(one, place + ".examples");
            Object celsius = example.get("celsius");
            out.add(new Rule.Example(
                    number(example.get("value"), place + ".examples.value"),
                    celsius == null ? Double.NaN : number(celsius, place + ".examples.celsius"),
                    text(example, "result", place + ".examples")));
        }
        return List.copyOf(out);
    }

    private static Optional<Rule.Range> range(Object node, String place) {
        if (node == null) {
            return Optional.empty();
        }
        List<?> ends = list(node, place);
        if (ends.size() != 2) {
            throw new IllegalArgumentException(place + ": two numbers expected.");
        }
        return Optional.of(new Rule.Range(number(ends.get(0), place), number(ends.get(1), place)));
    }

    private static Optional<Rule.Limit> limit(Object node, String place) {
        if (node == null) {
            return Optional.empty();
        }
        if (node instanceof Number plain) {
            return Optional.of(new Rule.Limit(plain.doubleValue(), Optional.empty(), Map.of()));
        }
        Map<?, ?> members = map(node, place);
        known(members, Set.of("byTemperature", "byChemistry", "otherwise"), place);
        if (members.containsKey("byTemperature")) {
            List<?> points = list(members.get("byTemperature"), place + ".byTemperature");
            double[] x = new double[points.size()];
            double[] y = new double[points.size()];
            for (int i = 0; i < x.length; i++) {
                List<?> pair = list(points.get(i), place + ".byTemperature");
                x[i] = number(pair.get(0), place + ".byTemperature");
                y[i] = number(pair.get(1), place + ".byTemperature");
            }
            return Optional.of(new Rule.Limit(y[0], Optional.of(new Table(x, y)), Map.of()));
        }
        Map<Chemistry, Double> by =
                byEnum(map(members.get("byChemistry"), place + ".byChemistry"), Chemistry.class, Chemistry::of, place);
        return Optional.of(
                new Rule.Limit(number(members.get("otherwise"), place + ".otherwise"), Optional.empty(), by));
    }

    private static <E extends Enum<E>> Map<E, Double> byEnum(
            Map<?, ?> members, Class<E> type, Function<String, E> of, String place) {
        Map<E, Double> out = new EnumMap<>(type);
        members.forEach((key, value) -> {
            try {
                out.put(of.apply(key.toString()), number(value, place + "." + key));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(place + ": " + e.getMessage(), e);
            }
        });
        return out;
    }

    private static Map<?, ?> map(Object node, String place) {
        if (node instanceof Map<?, ?> map) {
            return map;
        }
        throw new IllegalArgumentException(place + ": members expected, found " + node + ".");
    }

    private static List<?> list(Object node, String place) {
        if (node instanceof List<?> list) {
            return list;
        }
        throw new IllegalArgumentException(place + ": a list expected, found " + node + ".");
    }

    private static String text(Map<?, ?> members, String name, String place) {
        if (members.get(name) == null || members.get(name).toString().isBlank()) {
            throw new IllegalArgumentException(place + "." + name + ": missing.");
        }
        return members.get(name).toString().strip();
    }

    private static double number(Object node, String place) {
        if (node instanceof Number number && Double.isFinite(number.doubleValue())) {
            return number.doubleValue();
        }
        throw new IllegalArgumentException(place + ": a number expected, found " + node + ".");
    }

    private static void known(Map<?, ?> members, Set<String> names, String place) {
        for (Object key : members.keySet()) {
            if (!names.contains(key.toString())) {
                throw new IllegalArgumentException(place + ": unknown member '" + key + "'.");
            }
        }
    }
}
