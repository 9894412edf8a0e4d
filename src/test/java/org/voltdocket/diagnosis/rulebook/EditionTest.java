package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.Quantities;
import org.voltdocket.kernel.Interval;
import org.yaml.snakeyaml.Yaml;
import tools.jackson.databind.json.JsonMapper;

/** Every row of every edition is whole: quantity, unit, source, sentences, and examples that hold. */
class EditionTest {

    static List<Path> editions() {
        return Editions.files();
    }

    static Stream<Rule> rows() {
        return editions().stream().flatMap(file -> Editions.read(file).rules().stream());
    }

    @Test
    void thereIsAnEdition() {
        assertThat(editions()).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("editions")
    void theFileFitsTheSchemaAndBearsItsEditionsName(Path file) {
        String json = JsonMapper.shared().writeValueAsString((Object) new Yaml().load(Editions.text(file)));
        List<Error> errors = schema().validate(json, InputFormat.JSON);
        assertThat(errors).as(file.toString()).isEmpty();
        assertThat(file.getFileName()).hasToString(Editions.read(file).edition() + ".yaml");
    }

    @ParameterizedTest
    @MethodSource("editions")
    void theSchemaRefusesAnEditionWithAnUnknownMember(Path file) {
        Map<String, Object> top = new Yaml().load(Editions.text(file));
        @SuppressWarnings("unchecked")
        Map<String, Object> row = ((List<Map<String, Object>>) top.get("rules")).get(0);
        row.put("limt", 3);
        assertThat(schema().validate(JsonMapper.shared().writeValueAsString(top), InputFormat.JSON))
                .anyMatch(e -> e.toString().contains("limt"));
    }

    private static Schema schema() {
        String text = Editions.text(Path.of("shared/schemas/rulebook.json"));
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(text);
    }

    @ParameterizedTest
    @MethodSource("editions")
    void theStartingOddsCoverEveryCauseAndAddToOne(Path file) {
        Rulebook book = Editions.read(file);
        assertThat(book.startingOdds()).containsOnlyKeys(Cause.values());
        assertThat(book.startingOdds().values()).allMatch(p -> p > 0 && p < 1);
        assertThat(book.startingOdds().values().stream().mapToDouble(p -> p).sum())
                .isCloseTo(1, within(1e-9));
        assertThat(book.oddsSource()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("editions")
    void everyQuantityIsJudgedForEveryKindOfChargingControlAtMostOnceAGroup(Path file) {
        for (ChargingControl control : ChargingControl.values()) {
            Set<String> seen = new HashSet<>();
            for (Rule rule : Editions.read(file).rules()) {
                if (rule.appliesTo(control)) {
                    assertThat(seen.add(rule.quantity() + " in " + rule.group()))
                            .as(rule.id())
                            .isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theRowNamesAKnownQuantityItsUnitAndASource(Rule rule) {
        Quantities.Quantity quantity = Quantities.find(rule.quantity()).orElseThrow();
        assertThat(rule.unit()).isEqualTo(quantity.unit());
        assertThat(rule.source()).isNotBlank();
        assertThat(rule.group()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theRowHasASentenceForEverySideThatCanOccurAndNoOther(Rule rule) {
        assertThat(Sentences.has("finding." + rule.id() + ".inside")).isTrue();
        assertThat(Sentences.has("finding." + rule.id() + ".below"))
                .isEqualTo(rule.low().isPresent());
        assertThat(Sentences.has("finding." + rule.id() + ".above"))
                .isEqualTo(rule.high().isPresent());
    }

    @Test
    void noSentenceIsLeftWithoutARow() {
        Set<String> ids = rows().map(Rule::id).collect(Collectors.toSet());
        assertThat(Sentences.keys())
                .filteredOn(key -> key.startsWith("finding.") && !key.equals("finding.uncertain"))
                .allSatisfy(key -> assertThat(ids).contains(key.split("\\.")[1]));
    }

    @Test
    void aSentenceNamesNoFieldThatIsNotFilledIn() {
        rows().forEach(rule -> rule.examples()
                .forEach(example -> assertThat(judged(rule, example).finding().said())
                        .as(rule.id())
                        .doesNotContain("{")
                        .doesNotContain("Infinity")
                        .doesNotContain("NaN")));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theExamplesGiveTheResultTheyState(Rule rule) {
        for (Rule.Example example : rule.examples()) {
            EvaluatedRule judged = judged(rule, example);
            boolean inside = example.result().equals("inside");
            assertThat(judged.finding().result())
                    .as("%s %s", rule.id(), example)
                    .isEqualTo(inside ? Result.INSIDE : Result.OUTSIDE);
            assertThat(judged.outside()).isEqualTo(inside ? 0 : 1);
            Map<Cause, Double> weights =
                    inside ? rule.inside() : example.result().equals("below") ? rule.below() : rule.above();
            for (Cause cause : Cause.values()) {
                assertThat(judged.decibans().getOrDefault(cause, 0.0))
                        .as("%s %s", example, cause)
                        .isCloseTo(weights.getOrDefault(cause, 0.0), within(1e-9));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void eachLimitHasExamplesJustInsideAtAndJustOutside(Rule rule) {
        rule.low().ifPresent(limit -> around(rule, limit, "below", 1));
        rule.high().ifPresent(limit -> around(rule, limit, "above", -1));
    }

    private static void around(Rule rule, Rule.Limit limit, String outside, int inwards) {
        Set<String> seen = new TreeSet<>();
        for (Rule.Example example : rule.examples()) {
            double edge = limit.at(example.celsius(), null);
            double step = inwards * (example.value() - edge);
            double near = rule.unit().equals("count") ? 1 : Math.max(0.05 * Math.abs(edge), 0.01) + 1e-9;
            if (Math.abs(step) <= near) {
                seen.add(step > 0 ? "inside" : step < 0 ? "outside" : "at");
                assertThat(example.result()).isEqualTo(step >= 0 ? "inside" : outside);
            }
        }
        assertThat(seen).as(rule.id() + " near its limit").containsExactly("at", "inside", "outside");
    }

    private static EvaluatedRule judged(Rule rule, Rule.Example example) {
        List<EvaluatedRule> all = new ArrayList<>();
        for (ChargingControl control : ChargingControl.values()) {
            if (rule.appliesTo(control) && all.isEmpty()) {
                Facts facts = new Facts(null, new Facts.VehicleFacts(control, null, null, null, null), null, null);
                Measurement measured =
                        new Measurement(rule.quantity(), null, Interval.exact(example.value()), example.celsius());
                Rulebook one = new Rulebook("one", null, Map.of(), "", List.of(rule));
                all.addAll(RuleEvaluator.evaluate(one, facts, List.of(measured)));
            }
        }
        return Optional.of(all).filter(a -> a.size() == 1).orElseThrow().get(0);
    }
}
