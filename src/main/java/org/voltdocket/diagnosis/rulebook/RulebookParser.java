package org.voltdocket.diagnosis.rulebook;

import static org.voltdocket.diagnosis.rulebook.YamlNodes.known;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.list;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.map;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.refused;
import static org.voltdocket.diagnosis.rulebook.YamlNodes.text;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.kernel.Sha256;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.YAMLException;

/** Parses the YAML of an edition; missing, unknown and duplicate members are errors. */
final class RulebookParser {

    private static final Set<String> TOP =
            Set.of("edition", "issued", "inTheMaking", "startingOdds", "decisions", "tests", "rules");

    private RulebookParser() {}

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
        known(odds, Set.of("source", "odds"), "startingOdds");
        return new Rulebook(
                text(top, "edition", "the rule book"),
                Sha256.of(bytes),
                odds(odds.get("odds")),
                text(odds, "source", "startingOdds"),
                rules(list(top.get("rules"), "rules")),
                decisions(map(top.get("decisions"), "decisions")),
                tests(map(top.get("tests"), "tests")),
                !flag(top, "inTheMaking"));
    }

    private static boolean flag(Map<?, ?> top, String name) {
        Object value = top.get(name);
        if (value != null && !(value instanceof Boolean)) {
            throw refused(name, "true or false expected, found " + value + ".");
        }
        return Boolean.TRUE.equals(value);
    }

    private static Map<DecisionLimit, Rulebook.Decision> decisions(Map<?, ?> members) {
        Map<DecisionLimit, Rulebook.Decision> out = new EnumMap<>(DecisionLimit.class);
        members.forEach((key, node) -> {
            DecisionLimit limit = YamlNodes.named(key, DecisionLimit::of, "decisions");
            String place = "decisions." + limit.id();
            Map<?, ?> decision = map(node, place);
            known(decision, Set.of("value", "unit", "meaning", "source"), place);
            double value = YamlNodes.number(decision.get("value"), place + ".value");
            if (!limit.allows(value)) {
                throw refused(place + ".value", value + " is not in the range " + limit.range() + ".");
            }
            if (!text(decision, "unit", place).equals(limit.unit())) {
                throw refused(place + ".unit", "the unit is " + limit.unit() + ".");
            }
            out.put(
                    limit,
                    new Rulebook.Decision(value, text(decision, "meaning", place), text(decision, "source", place)));
        });
        for (DecisionLimit limit : DecisionLimit.values()) {
            if (!out.containsKey(limit)) {
                throw refused("decisions." + limit.id(), "missing.");
            }
        }
        return Collections.unmodifiableMap(out);
    }

    private static Map<EvidenceKind, DiagnosticTest> tests(Map<?, ?> members) {
        Map<EvidenceKind, DiagnosticTest> out = new EnumMap<>(EvidenceKind.class);
        members.forEach((key, node) -> {
            EvidenceKind kind = YamlNodes.named(key, EvidenceKind::of, "tests");
            String place = "tests." + kind.id();
            Map<?, ?> test = map(node, place);
            known(test, Set.of("minutes", "outside", "otherwise", "source"), place);
            Map<Cause, Double> outside =
                    YamlNodes.byEnum(test.get("outside"), Cause.class, Cause::of, place + ".outside");
            outside.forEach((cause, p) -> probability(p, place + ".outside." + cause.id()));
            double otherwise = YamlNodes.number(test.get("otherwise"), place + ".otherwise");
            probability(otherwise, place + ".otherwise");
            double minutes = YamlNodes.number(test.get("minutes"), place + ".minutes");
            out.put(kind, new DiagnosticTest(minutes, outside, otherwise, text(test, "source", place)));
        });
        return Collections.unmodifiableMap(out);
    }

    private static void probability(double value, String place) {
        if (!(value > 0 && value < 1)) {
            throw refused(place, value + " is not a probability between 0 and 1.");
        }
    }

    private static List<Rule> rules(List<?> rows) {
        List<Rule> rules = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Object row : rows) {
            String place = "rules[" + rules.size() + "]";
            Rule rule = RuleParser.read(map(row, place), place);
            if (!ids.add(rule.id())) {
                throw refused(place + ".id", "'" + rule.id() + "' stands twice.");
            }
            rules.add(rule);
        }
        return List.copyOf(rules);
    }

    private static Map<Cause, Double> odds(Object members) {
        String place = "startingOdds.odds";
        Map<Cause, Double> odds = YamlNodes.byEnum(members, Cause.class, Cause::of, place);
        double sum = odds.values().stream().mapToDouble(Double::doubleValue).sum();
        if (odds.size() != Cause.values().length || Math.abs(sum - 1) > 1e-9) {
            throw refused(place, "every cause needs one, and they add to 1; they add to " + sum + ".");
        }
        odds.forEach((cause, probability) -> {
            if (!(probability > 0)) {
                throw refused(place + "." + cause.id(), "no evidence can raise odds of " + probability + ".");
            }
        });
        return odds;
    }
}
