package org.voltdocket.worlds.fit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.yaml.snakeyaml.Yaml;

/** The weights of evidence that the fit keeps near to. */
public final class ExpertWeights {

    private final Map<String, Map<String, Map<String, Number>>> byRule;

    private ExpertWeights(Map<String, Map<String, Map<String, Number>>> byRule) {
        this.byRule = byRule;
    }

    /** The rule book with the expert's weights instead of its own. */
    public static Rulebook in(Rulebook book) {
        try (InputStream yaml = ExpertWeights.class.getResourceAsStream("/worlds/expert-weights.yaml")) {
            ExpertWeights expert = new ExpertWeights(new Yaml().load(yaml));
            return ReweightedRules.of(book, expert::in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Rule in(Rule rule) {
        Map<String, Map<String, Number>> own = byRule.get(rule.id());
        return own == null
                ? rule
                : ReweightedRules.of(
                        rule, rule.group(), weights(own, "below"), weights(own, "inside"), weights(own, "above"));
    }

    private static Map<Cause, Double> weights(Map<String, Map<String, Number>> own, String side) {
        Map<Cause, Double> out = new EnumMap<>(Cause.class);
        own.getOrDefault(side, Map.of()).forEach((cause, value) -> out.put(Cause.of(cause), value.doubleValue()));
        return out;
    }
}
