package org.voltdocket.diagnosis.cause;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.cause.PlausibleFacts.Plausible;
import org.voltdocket.diagnosis.rulebook.DecisionLimit;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Finds missing facts that can change the decision: each is set to its plausible values in turn, and the case is decided
 * again. A value has the probability share times likelihood of the evidence given the value (Bayes). A fact can change the
 * decision if the values that do so have together at least the probability {@link DecisionLimit#MISSING_FACT}. A battery
 * whose rating is missing is judged all the same if its plausible ratings lead to one decision up to that probability.
 *
 * @param decision the decision, with an open leaning where a missing fact can change it
 * @param missing names of those facts, most important first
 */
public record DecisiveFacts(CaseDecision decision, List<String> missing) {

    /**
     * A decision that a value of a fact leads to.
     *
     * @param probability of the value
     */
    private record Outcome(CaseDecision decision, double probability) {}

    /**
     * @param variants plausible facts by the name of the missing fact, see {@link PlausibleFacts}
     * @param decide decides the case given other facts
     */
    public static DecisiveFacts of(
            Rulebook book,
            CaseDecision base,
            Map<String, List<Plausible>> variants,
            Function<Facts, CaseDecision> decide) {
        double limit = book.decision(DecisionLimit.MISSING_FACT);
        Map<String, List<Outcome>> outcomes = new LinkedHashMap<>();
        variants.forEach((fact, values) -> outcomes.put(fact, outcomes(fact, values, decide)));
        Optional<CaseDecision> unrated = base.battery() == BatteryReason.FACTS_MISSING && sized(variants)
                ? unrated(base, outcomes.get(PlausibleFacts.RATING), limit)
                : Optional.empty();
        CaseDecision decision = unrated.orElse(base);
        List<String> missing = new ArrayList<>();
        boolean batteryDepends = false;
        for (Map.Entry<String, List<Outcome>> fact : outcomes.entrySet()) {
            // without a rating no other fact shows what a judged battery would mean: the first cause must stay
            boolean byCause = unrated.isPresent() && !fact.getKey().equals(PlausibleFacts.RATING);
            Predicate<CaseDecision> change =
                    byCause ? other -> !other.sameFirstCause(decision) : other -> changes(decision, other);
            if (probability(fact.getValue(), change) >= limit) {
                missing.add(fact.getKey());
                batteryDepends |= !byCause && probability(fact.getValue(), other -> turns(decision, other)) >= limit;
            }
        }
        boolean opens = decision.firm() && !missing.isEmpty();
        return new DecisiveFacts(opens ? decision.open(batteryDepends) : decision, List.copyOf(missing));
    }

    private static List<Outcome> outcomes(String fact, List<Plausible> values, Function<Facts, CaseDecision> decide) {
        boolean comparable = !fact.equals(PlausibleFacts.CONTROL);
        List<Outcome> joint = new ArrayList<>();
        for (Plausible value : values) {
            CaseDecision decision = decide.apply(value.facts());
            joint.add(new Outcome(decision, value.share() * (comparable ? decision.likelihood() : 1)));
        }
        double sum = joint.stream().mapToDouble(Outcome::probability).sum();
        return joint.stream()
                .map(one -> new Outcome(one.decision(), one.probability() / sum))
                .toList();
    }

    private static boolean changes(CaseDecision base, CaseDecision other) {
        return base.firm() ? !other.agreesWith(base) : other.firm() || turns(base, other);
    }

    private static boolean turns(CaseDecision base, CaseDecision other) {
        return other.battery().verdict() != base.battery().verdict();
    }

    private static double probability(List<Outcome> outcomes, Predicate<CaseDecision> which) {
        double sum = 0;
        for (Outcome one : outcomes) {
            sum += which.test(one.decision()) ? one.probability() : 0;
        }
        return sum;
    }

    /** Whether the rating is missing and the capacity is known, so that the rating is known within a fifth. */
    private static boolean sized(Map<String, List<Plausible>> variants) {
        List<Plausible> ratings = variants.getOrDefault(PlausibleFacts.RATING, List.of());
        return !ratings.isEmpty() && ratings.get(0).facts().battery().capacityAh() != null;
    }

    /** The decision that nearly all plausible ratings lead to, if there is one and the causes agree with it. */
    private static Optional<CaseDecision> unrated(CaseDecision base, List<Outcome> ratings, double limit) {
        CaseDecision likeliest = ratings.stream()
                .max(Comparator.comparingDouble(Outcome::probability))
                .orElseThrow()
                .decision();
        boolean agreed = likeliest.firm()
                && base.sameFirstCause(likeliest)
                && probability(ratings, other -> !other.agreesWith(likeliest)) < limit;
        return agreed
                ? Optional.of(new CaseDecision(
                        base.rules(), base.causes(), base.likelihood(), likeliest.battery(), likeliest.leaning()))
                : Optional.empty();
    }
}
