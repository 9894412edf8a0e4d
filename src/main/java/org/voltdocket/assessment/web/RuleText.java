package org.voltdocket.assessment.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.quantity.LookupTable;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.ui.TextFormatter;

/** Puts a row of the rule book into words. */
@Component
class RuleText {

    private static final List<String> SIDES = List.of("below", "inside", "above");

    private final TextFormatter words;

    RuleText(TextFormatter words) {
        this.words = words;
    }

    /**
     * A rule as the page shows it.
     *
     * @param limit in words, without the unit
     * @param corrections how the limit moves with temperature or construction; empty where it does not
     * @param control kinds of charging control it applies to, in words; empty for all
     * @param sentences what it says on each side that it has
     * @param weights of each cause that it moves
     */
    public record Line(
            Rule rule,
            String limit,
            List<String> corrections,
            String control,
            List<Sentence> sentences,
            List<Weights> weights) {}

    /** What a rule says on one side of its limits; numbers are left open. */
    public record Sentence(String side, String text) {}

    /** Decibans of one cause; null where the rule leaves it alone. */
    public record Weights(String cause, Double below, Double inside, Double above) {}

    Line line(Rule rule) {
        List<String> corrections = new ArrayList<>();
        rule.low().ifPresent(limit -> corrections.addAll(corrections(limit)));
        rule.high().ifPresent(limit -> corrections.addAll(corrections(limit)));
        String control = rule.control().stream()
                .map(ChargingControl::id)
                .map(id -> words.of("charging-control", id))
                .collect(Collectors.joining(", "));
        List<Sentence> sentences = SIDES.stream()
                .filter(side -> words.knows("finding", rule.id() + "." + side))
                .map(side -> new Sentence(side, open(words.of("finding", rule.id() + "." + side))))
                .toList();
        List<Weights> weights = Arrays.stream(Cause.values())
                .filter(c -> rule.below().containsKey(c)
                        || rule.inside().containsKey(c)
                        || rule.above().containsKey(c))
                .map(c -> new Weights(
                        c.id(),
                        rule.below().get(c),
                        rule.inside().get(c),
                        rule.above().get(c)))
                .toList();
        return new Line(rule, limit(rule), corrections, control, sentences, weights);
    }

    private String limit(Rule rule) {
        String low = rule.low().map(this::plain).orElse("");
        String high = rule.high().map(this::plain).orElse("");
        String both = low.isEmpty() || high.isEmpty() ? low + high : low + " … " + high;
        return words.of("comparison", rule.comparison()) + " " + both;
    }

    private String plain(Rule.Limit limit) {
        return words.number(limit.at(20, null));
    }

    private List<String> corrections(Rule.Limit limit) {
        List<String> out = new ArrayList<>();
        Optional<LookupTable> table = limit.byTemperature();
        if (table.isPresent()) {
            StringBuilder points = new StringBuilder();
            for (int i = 0; i < table.get().x().length; i++) {
                points.append(points.isEmpty() ? "" : ", ")
                        .append(words.number(table.get().x()[i]))
                        .append(" °C: ")
                        .append(words.number(table.get().y()[i]));
            }
            out.add(points.toString());
        }
        if (!limit.byChemistry().isEmpty()) {
            out.add(limit.byChemistry().entrySet().stream()
                    .sorted(Map.Entry.comparingByKey())
                    .map(e -> e.getKey().id().toUpperCase(Locale.ROOT) + ": " + words.number(e.getValue()))
                    .collect(Collectors.joining(", ")));
        }
        return out;
    }

    private static String open(String sentence) {
        return sentence.replaceAll("\\{\\w+}", "…");
    }
}
