package org.voltdocket.diagnosis.rulebook;

import static org.voltdocket.diagnosis.rulebook.YamlNodes.known;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.list;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.map;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.named;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.number;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.refused;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.quantity.LookupTable;
import org.voltdocket.diagnosis.quantity.Quantities;

/** Parses one rule of an edition. */
final class RuleParser {

    private static final Set<String> MEMBERS = Set.of(
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
            "cases",
            "examples");

    private final Map<?, ?> row;
    private final String place;

    private RuleParser(Map<?, ?> row, String place) {
        this.row = row;
        this.place = place;
    }

    /**
     * @param place of the row, for messages
     * @throws IllegalArgumentException if the row is wrong; the message names the member
     */
    static Rule read(Map<?, ?> row, String place) {
        known(row, MEMBERS, place);
        return new RuleParser(row, place + " (" + text(row, "id", place) + ")").rule();
    }

    private Rule rule() {
        Optional<Rule.Limit> low = limit("atLeast");
        Optional<Rule.Limit> high = limit("atMost");
        if (low.isEmpty() && high.isEmpty()) {
            throw refused(place, "a row has atLeast, atMost or both.");
        }
        Map<?, ?> weights = map(row.get("weights"), at("weights"));
        known(weights, Set.of("below", "inside", "above"), at("weights"));
        return new Rule(
                text(row, "id", place),
                quantity(),
                low,
                high,
                text(row, "unit", place),
                text(row, "source", place),
                text(row, "group", place),
                control(),
                decides(),
                weights(weights, "below", low.isPresent()),
                weights(weights, "inside", true),
                weights(weights, "above", high.isPresent()),
                plausible(),
                examples(),
                cases());
    }

    /** Numbers of cases by side; empty where the row names none. */
    private Map<String, Integer> cases() {
        Map<String, Integer> out = new TreeMap<>();
        if (row.get("cases") != null) {
            Map<?, ?> members = map(row.get("cases"), at("cases"));
            known(members, Set.of("below", "inside", "above"), at("cases"));
            members.forEach((side, count) -> out.put(String.valueOf(side), (int) number(count, at("cases." + side))));
        }
        return Collections.unmodifiableMap(out);
    }

    private String at(String member) {
        return place + "." + member;
    }

    private String quantity() {
        String id = text(row, "quantity", place);
        String unit = text(row, "unit", place);
        Quantities.Quantity quantity = Quantities.find(id)
                .orElseThrow(() -> refused(at("quantity"), "nothing measures '" + id + "'; see Quantities."));
        if (!quantity.unit().equals(unit)) {
            throw refused(at("unit"), "'" + unit + "'; " + id + " is measured in " + quantity.unit() + ".");
        }
        return id;
    }

    private List<ChargingControl> control() {
        List<ChargingControl> out = new ArrayList<>();
        if (row.get("control") != null) {
            list(row.get("control"), at("control"))
                    .forEach(one -> out.add(named(one, ChargingControl::of, at("control"))));
        }
        return List.copyOf(out);
    }

    private Rule.Decides decides() {
        Object node = row.get("decides");
        if (node == null) {
            return Rule.Decides.NOTHING;
        }
        for (Rule.Decides one : Rule.Decides.values()) {
            if (one.name().toLowerCase(Locale.ROOT).equals(node)) {
                return one;
            }
        }
        throw refused(at("decides"), "'" + node + "' is none of nothing, battery, failure, charge.");
    }

    private Map<Cause, Double> weights(Map<?, ?> weights, String side, boolean limited) {
        Object members = weights.get(side);
        if (members != null && !limited) {
            throw refused(at("weights." + side), "the row has no limit on that side.");
        }
        return members == null ? Map.of() : YamlNodes.byEnum(members, Cause.class, Cause::of, at("weights." + side));
    }

    private List<Rule.Example> examples() {
        List<Rule.Example> out = new ArrayList<>();
        for (Object one : list(row.get("examples"), at("examples"))) {
            String here = at("examples[" + out.size() + "]");
            Map<?, ?> example = map(one, here);
            known(example, Set.of("value", "celsius", "result"), here);
            Object celsius = example.get("celsius");
            String result = text(example, "result", here);
            if (!Set.of("below", "inside", "above").contains(result)) {
                throw refused(here + ".result", "'" + result + "' is none of below, inside, above.");
            }
            out.add(new Rule.Example(
                    number(example.get("value"), here + ".value"),
                    celsius == null ? Double.NaN : number(celsius, here + ".celsius"),
                    result));
        }
        return List.copyOf(out);
    }

    private Optional<Rule.Range> plausible() {
        if (row.get("plausible") == null) {
            return Optional.empty();
        }
        double[] ends = pair(row.get("plausible"), at("plausible"));
        if (!(ends[0] < ends[1])) {
            throw refused(at("plausible"), ends[0] + " is not below " + ends[1] + ".");
        }
        return Optional.of(new Rule.Range(ends[0], ends[1]));
    }

    private Optional<Rule.Limit> limit(String member) {
        Object node = row.get(member);
        if (node == null) {
            return Optional.empty();
        }
        if (node instanceof Number) {
            return Optional.of(new Rule.Limit(number(node, at(member)), Optional.empty(), Map.of()));
        }
        Map<?, ?> members = map(node, at(member));
        known(members, Set.of("byTemperature", "byChemistry", "otherwise"), at(member));
        if (members.containsKey("byTemperature")) {
            LookupTable table = table(members.get("byTemperature"), at(member) + ".byTemperature");
            return Optional.of(new Rule.Limit(table.y()[0], Optional.of(table), Map.of()));
        }
        Map<Chemistry, Double> by = YamlNodes.byEnum(
                members.get("byChemistry"), Chemistry.class, Chemistry::of, at(member) + ".byChemistry");
        double otherwise = number(members.get("otherwise"), at(member) + ".otherwise");
        return Optional.of(new Rule.Limit(otherwise, Optional.empty(), by));
    }

    private static LookupTable table(Object node, String place) {
        List<?> points = list(node, place);
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        for (int i = 0; i < x.length; i++) {
            double[] point = pair(points.get(i), place + "[" + i + "]");
            x[i] = point[0];
            y[i] = point[1];
        }
        try {
            return new LookupTable(x, y);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(place + ": " + e.getMessage() + ".", e);
        }
    }

    private static double[] pair(Object node, String place) {
        List<?> two = list(node, place);
        if (two.size() != 2) {
            throw refused(place, "two numbers expected.");
        }
        return new double[] {number(two.get(0), place), number(two.get(1), place)};
    }
}
