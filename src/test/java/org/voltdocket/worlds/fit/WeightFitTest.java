package org.voltdocket.worlds.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rule;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.FitCase.Look;

/** The fit on cases written by hand. */
class WeightFitTest {

    private static Rulebook book(double inside, double above) {
        Rule rule = new Rule(
                "ripple",
                "ripple",
                Optional.empty(),
                Optional.of(new Rule.Limit(0.5, Optional.empty(), Map.of())),
                "V",
                "made for a test",
                "ripple",
                List.of(),
                Rule.Decides.NOTHING,
                Map.of(),
                inside == 0 ? Map.of() : Map.of(Cause.WIRING, inside),
                above == 0 ? Map.of() : Map.of(Cause.WIRING, above),
                Optional.empty(),
                List.of());
        Map<Cause, Double> odds = new EnumMap<>(Cause.class);
        Arrays.stream(Cause.values()).forEach(cause -> odds.put(cause, 0.001));
        odds.put(Cause.NONE, 0.6);
        odds.put(Cause.WIRING, 0.392);
        return new Rulebook("one", null, odds, "made for a test", List.of(rule));
    }

    /** Forty cables above the limit, and forty healthy vehicles inside. */
    private static List<FitCase> cases() {
        List<FitCase> cases = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            cases.add(of(Cause.WIRING, i, 0, 1));
            cases.add(of(Cause.NONE, i, 1, 0));
        }
        return cases;
    }

    private static FitCase of(Cause cause, int seed, double inside, double above) {
        return new FitCase("test", "all", cause.id(), seed, cause, List.of(new Look("ripple", 0, inside, above)));
    }

    private static double wiring(Rulebook book, double penalty) {
        return WeightFit.on(book, cases(), penalty).weights("ripple", 2).getOrDefault(Cause.WIRING, 0.0);
    }

    @Test
    void aFindingThatTellsTheCauseGainsWeightWithinBounds() {
        assertThat(wiring(book(-1, 2), 0.01)).isGreaterThan(6).isLessThanOrEqualTo(11);
    }

    @Test
    void aLargePenaltyKeepsTheExpertsWeights() {
        assertThat(wiring(book(-1, 2), 1e6)).isCloseTo(2, within(0.11));
    }

    @Test
    void aWeightKeepsItsSignAndASilentRuleStaysSilent() {
        assertThat(wiring(book(-3, -1), 0.001)).isBetween(-1.0, -0.3);
        assertThat(wiring(book(0, 0), 0.001)).isZero();
    }

    /** The order of the sides is the expert's, whatever the cases say. */
    @Test
    void theOrderOfTheSidesIsNotReversed() {
        WeightFit fit = WeightFit.on(book(4, 2), cases(), 0.001);
        assertThat(fit.weights("ripple", 1).get(Cause.WIRING))
                .isGreaterThanOrEqualTo(fit.weights("ripple", 2).get(Cause.WIRING));
    }

    @Test
    void aLineKeepsACase() {
        FitCase one = of(Cause.WIRING, 3, 0.25, 0.5);
        assertThat(FitCase.of(one.line())).isEqualTo(one);
    }

    @Test
    void theWrittenEditionHasTheFittedWeightsAndTheirCases() {
        Rulebook edition = Editions.of(Rulebook.CURRENT_EDITION);
        String text = FittedEdition.text(
                Editions.text(Path.of("shared/rulebook/" + edition.edition() + ".yaml")), WeightFit.none(edition));
        assertThat(text).contains("edition: \"" + edition.edition() + "\"").contains("    cases: {}");
        assertThat(text.lines().filter(line -> line.startsWith("    cases: ")).count())
                .isEqualTo(edition.rules().size());
    }
}
