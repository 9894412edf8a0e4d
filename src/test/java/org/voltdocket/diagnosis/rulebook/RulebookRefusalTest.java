package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;

/** A file that is no rule book is refused, and the message says where it is wrong. */
class RulebookRefusalTest {

    private static final String GOOD = """
            edition: "2000.1"
            issued: "2000-01-01"
            startingOdds:
              source: ours
              odds: {battery-defect: 0.1, battery-worn: 0.1, charging-source: 0.1, current-sensor: 0.1, charge-control: 0.1, wiring: 0.1, standing-drain: 0.1, duty: 0.1, misfit: 0.1, none: 0.1}
            decisions:
              leaning: {value: 0.6, unit: probability, meaning: m, source: ours}
              leaning-vehicle: {value: 0.9, unit: probability, meaning: m, source: ours}
              leaning-untested: {value: 0.85, unit: probability, meaning: m, source: ours}
              first-cause: {value: 0.4, unit: probability, meaning: m, source: ours}
              test-failed: {value: 0.3, unit: probability, meaning: m, source: ours}
              battery-fault: {value: 0.5, unit: probability, meaning: m, source: ours}
              kind-known: {value: 0.8, unit: share, meaning: m, source: ours}
              wrong-repair: {value: 120, unit: min, meaning: m, source: ours}
              next-step: {value: 0.15, unit: probability, meaning: m, source: ours}
              missing-fact: {value: 0.05, unit: probability, meaning: m, source: ours}
            tests:
              charging-test: {minutes: 5, outside: {wiring: 0.4}, otherwise: 0.03, source: ours}
            rules:
              - id: ripple
                quantity: ripple
                atMost: 0.5
                unit: V
                source: ours
                group: ripple
                weights:
                  inside: {charging-source: -1}
                  above: {charging-source: 12}
                examples:
                  - {value: 0.49, result: inside}
              - id: cranking
                quantity: cranking-minimum
                atLeast: {byTemperature: [[-18, 8.5], [21, 9.6]]}
                unit: V
                source: ours
                group: cranking
                weights:
                  below: {wiring: 1}
                examples:
                  - {value: 9.7, celsius: 21, result: inside}
            """;

    private static Rulebook parse(String text) {
        return RulebookParser.parse(text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void theFileThatTheOthersSpoilIsRead() {
        assertThat(parse(GOOD).rules()).extracting(Rule::id).containsExactly("ripple", "cranking");
        assertThat(parse(GOOD).edition()).isEqualTo("2000.1");
    }

    @Test
    void whatStandsInTheFileIsReadAsItStands() {
        Rulebook book = parse(GOOD.replace("issued:", "inTheMaking: true\nissued:")
                .replace(
                        "atMost: 0.5",
                        "atMost: {byChemistry: {gel: 0.4}, otherwise: 0.5}\n    plausible: [0, 3]\n"
                                + "    control: [managed]\n    decides: battery"));
        assertThat(book.released()).isFalse();
        Rule ripple = book.rules().get(0);
        assertThat(ripple.low()).isEmpty();
        assertThat(ripple.high().orElseThrow().at(20, Chemistry.GEL)).isEqualTo(0.4);
        assertThat(ripple.high().orElseThrow().at(20, Chemistry.AGM)).isEqualTo(0.5);
        assertThat(ripple.plausible()).contains(new Rule.Range(0, 3));
        assertThat(ripple.decides()).isEqualTo(Rule.Decides.BATTERY);
        assertThat(ripple.below()).isEmpty();
        assertThat(ripple.inside()).isEqualTo(Map.of(Cause.CHARGING_SOURCE, -1.0));
        assertThat(ripple.above()).isEqualTo(Map.of(Cause.CHARGING_SOURCE, 12.0));
        assertThat(ripple.appliesTo(ChargingControl.MANAGED)).isTrue();
        assertThat(ripple.appliesTo(ChargingControl.CONVENTIONAL)).isFalse();
        Rule cranking = book.rules().get(1);
        assertThat(cranking.decides()).isEqualTo(Rule.Decides.NOTHING);
        assertThat(cranking.plausible()).isEmpty();
        assertThat(cranking.low().orElseThrow().at(1.5, null)).isCloseTo(9.05, within(1e-12));
        assertThat(parse(GOOD).released()).isTrue();
    }

    @Test
    void everyDecisionLimitIsRequiredAndReadWithItsMeaning() {
        assertThat(parse(GOOD).decision(DecisionLimit.LEANING_UNTESTED)).isEqualTo(0.85);
        assertThat(parse(GOOD).decisions()).containsOnlyKeys(DecisionLimit.values());
        assertThatThrownBy(() -> parse(GOOD.replaceAll("(?m)^  next-step: .*\n", "")))
                .hasMessage("decisions.next-step: missing.");
    }

    /** A row for what is not known applies where nobody said what kind of control the vehicle has. */
    @Test
    void aRowForUnknownControlAppliesWhereNobodyToldIt() {
        Rule rule = parse(GOOD.replace("atMost: 0.5", "atMost: 0.5\n    control: [conventional, unknown]"))
                .rules()
                .get(0);
        assertThat(rule.appliesTo(null)).isTrue();
        assertThat(rule.appliesTo(ChargingControl.CONVENTIONAL)).isTrue();
        assertThat(rule.appliesTo(ChargingControl.MANAGED)).isFalse();
        assertThat(parse(GOOD).rules().get(0).appliesTo(null)).isTrue();
    }

    @Test
    void rowsThatCannotBeJudgedByAreNamedWithWhy() {
        String good = GOOD.replace("id: cranking", "id: cranking-minimum");
        assertThat(RuleValidator.of(parse(good))).isEmpty();
        assertThat(RuleValidator.of(parse(good.replace("value: 0.49", "value: 0.51"))))
                .containsExactly(
                        new RuleValidator.Flaw(0, "examples[0].result", "the limits make 0.51 above, not inside."));
        assertThat(RuleValidator.of(parse(good.replace("value: 9.7", "value: 9.5"))))
                .containsExactly(
                        new RuleValidator.Flaw(1, "examples[0].result", "the limits make 9.5 below, not inside."));
        assertThat(RuleValidator.of(parse(good.replace("id: ripple", "id: hum").replace("value: 0.49", "value: 7"))))
                .as("no example is tried where nothing can be said of it")
                .extracting(RuleValidator.Flaw::row, RuleValidator.Flaw::member)
                .containsExactly(tuple(0, "id"), tuple(0, "id"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            edition: "2000.1" | edition: 2000.1 | the rule book.edition: a text expected
            edition: "2000.1" | name: x | the rule book: unknown member 'name'
            otherwise: 0.03   | otherwise: 0 | tests.charging-test.otherwise: 0.0 is not a probability
            outside: {wiring: 0.4} | outside: {cable: 0.4} | tests.charging-test.outside:
            minutes: 5        | minute: 5 | tests.charging-test: unknown member 'minute'
            charging-test:    | charge-test: | tests: 'charge-test' is none of
            first-cause: {value: 0.4 | first-cause: {value: 1.4 | decisions.first-cause.value: 1.4 is not in the range 0.0 to 1.0.
            leaning: {value: 0.6 | leaning: {value: often | decisions.leaning.value: a number expected
            leaning: {value: 0.6, unit: probability | leaning: {value: 0.6, unit: V | decisions.leaning.unit: the unit is probability.
            first-cause: {value | second-cause: {value | decisions: 'second-cause' is none of leaning
            leaning: {value: 0.6, unit: probability, meaning: m | leaning: {value: 0.6, unit: probability | decisions.leaning.meaning: missing.
            source: ours      | src: ours | startingOdds: unknown member 'src'
            group: ripple     | grp: ripple | rules[0]: unknown member 'grp'
            group: ripple     | tag: | rules[0]: unknown member 'tag'
            id: cranking      | id: ripple | rules[1].id: 'ripple' stands twice
            id: ripple        | id: ' ' | rules[0].id: missing
            atMost: 0.5       | atMost: half | rules[0] (ripple).atMost: members expected
            atMost: 0.5       | atMost: .nan | rules[0] (ripple).atMost: a number expected
            atMost: 0.5       | atMost: .inf | rules[0] (ripple).atMost: a number expected
            atMost: 0.5       | decides: nothing | rules[0] (ripple): a row has atLeast, atMost or both
            atMost: 0.5       | atMost: {byTemp: []} | rules[0] (ripple).atMost: unknown member 'byTemp'
            atMost: 0.5       | atMost: {byChemistry: {agm: 1}} | rules[0] (ripple).atMost.otherwise: a number expected
            atMost: 0.5       | atMost: {byChemistry: {wet: 1}, otherwise: 1} | rules[0] (ripple).atMost.byChemistry:
            [-18, 8.5]        | [-18] | rules[1] (cranking).atLeast.byTemperature[0]: two numbers expected
            [-18, 8.5]        | [30, 8.5] | rules[1] (cranking).atLeast.byTemperature: a table's points increase
            unit: V           | unit: A | rules[0] (ripple).unit: 'A'; ripple is measured in V
            quantity: ripple | quantity: ripple/9 | rules[0] (ripple).quantity: nothing measures 'ripple/9'
            charging-source: 12 | charging: 12 | rules[0] (ripple).weights.above:
            charging-source: 12 | charging-source: much | rules[0] (ripple).weights.above.charging-source: a number expected
            above: {          | outside: { | rules[0] (ripple).weights: unknown member 'outside'
            above: {          | below: { | rules[0] (ripple).weights.below: the row has no limit on that side
            group: ripple     | group: r, plausible: 1 | rule book is no YAML
            atMost: 0.5       | atMost: 0.5\\n    plausible: [3, 1] | rules[0] (ripple).plausible: 3.0 is not below 1.0
            atMost: 0.5       | atMost: 0.5\\n    control: [electric] | rules[0] (ripple).control:
            atMost: 0.5       | atMost: 0.5\\n    control: managed | rules[0] (ripple).control: a list expected
            atMost: 0.5       | atMost: 0.5\\n    decides: all | rules[0] (ripple).decides: 'all'
            atMost: 0.5       | atMost: 0.5\\n    atMost: 0.6 | rule book is no YAML
            result: inside    | result: within | rules[0] (ripple).examples[0].result: 'within'
            value: 0.49       | value: x | rules[0] (ripple).examples[0].value: a number expected
            celsius: 21       | temperature: 21 | rules[1] (cranking).examples[0]: unknown member 'temperature'
            none: 0.1         | none: 0.2 | startingOdds.odds: every cause needs one, and they add to 1
            ', none: 0.1'     | '' | startingOdds.odds: every cause needs one
            'misfit: 0.1, none: 0.1' | 'misfit: 0, none: 0.2' | startingOdds.odds.misfit: no evidence can raise
            misfit: 0.1       | bad-luck: 0.1 | startingOdds.odds:
            edition: "2000.1" | edition: "2000.1"\\ninTheMaking: perhaps | inTheMaking: true or false expected, found perhaps
            atMost: 0.5       | atMost: 0.5\\n    plausible: [1, 1] | rules[0] (ripple).plausible: 1.0 is not below 1.0
            """)
    void whatIsWrongIsRefusedWithItsPlace(String from, String to, String message) {
        String bad = GOOD.replaceFirst(java.util.regex.Pattern.quote(from), to.replace("\\n", "\n"));
        assertThat(bad).isNotEqualTo(GOOD);
        assertThatThrownBy(() -> parse(bad))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            source | rules[0] (ripple).source: missing
            unit | rules[0] (ripple).unit: missing
            group | rules[0] (ripple).group: missing
            quantity | rules[0] (ripple).quantity: missing
            """)
    void aMemberThatIsMissingIsNamed(String member, String message) {
        String bad = GOOD.replaceFirst("\n    " + member + ": [^\n]*", "");
        assertThat(bad).isNotEqualTo(GOOD);
        assertThatThrownBy(() -> parse(bad)).hasMessageStartingWith(message);
    }

    @Test
    void aFileOfAnotherKindIsRefused() {
        assertThatThrownBy(() -> parse("- 1\n- 2\n")).hasMessageStartingWith("the rule book: members expected");
        assertThatThrownBy(() -> parse("")).hasMessageStartingWith("the rule book: members expected");
        assertThatThrownBy(() -> parse("a: [")).hasMessageStartingWith("The rule book is no YAML");
        assertThatThrownBy(() -> parse(GOOD.substring(0, GOOD.indexOf("rules:"))))
                .hasMessageStartingWith("rules: a list expected");
    }
}
