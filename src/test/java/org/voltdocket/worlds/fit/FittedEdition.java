package org.voltdocket.worlds.fit;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Cause;

/** Writes fitted weights and the number of cases behind them into the text of a rule book; all else stays as it is. */
public final class FittedEdition {

    private static final List<String> SIDES = List.of("below", "inside", "above");

    private FittedEdition() {}

    /** The text of the rule book with the weights of the fit. */
    public static String text(String yaml, WeightFit fit) {
        StringBuilder out = new StringBuilder();
        String rule = null;
        boolean weights = false;
        for (String line : yaml.split("\n")) {
            if (line.startsWith("  - id: ")) {
                rule = line.substring("  - id: ".length()).strip();
            }
            String member = line.strip().split(":")[0];
            boolean side = weights && line.startsWith("      ") && SIDES.contains(member);
            if (weights && !side) {
                out.append("    cases: ").append(cases(fit, rule)).append('\n');
            }
            weights = side || line.equals("    weights:");
            if (side) {
                Map<Cause, Double> fitted = fit.weights(rule, SIDES.indexOf(member));
                out.append("      ")
                        .append(member)
                        .append(": ")
                        .append(map(fitted))
                        .append('\n');
            } else if (!line.startsWith("    cases: ")) {
                out.append(line).append('\n');
            }
        }
        return out.toString();
    }

    private static String map(Map<Cause, Double> weights) {
        return weights.entrySet().stream()
                .map(e -> e.getKey().id() + ": " + number(e.getValue()))
                .collect(Collectors.joining(", ", "{", "}"));
    }

    private static String number(double decibans) {
        String text = String.format(Locale.ROOT, "%.1f", decibans);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static String cases(WeightFit fit, String rule) {
        return SIDES.stream()
                .filter(side -> fit.cases(rule, SIDES.indexOf(side)) > 0)
                .map(side -> side + ": " + fit.cases(rule, SIDES.indexOf(side)))
                .collect(Collectors.joining(", ", "{", "}"));
    }
}
