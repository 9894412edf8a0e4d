package org.voltdocket.diagnosis.rulebook;

import java.util.EnumMap;
import java.util.Map;
import org.voltdocket.diagnosis.Assessment.Finding;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.kernel.Interval;

/**
 * A rule evaluated for a measurement.
 *
 * @param rule the rule
 * @param finding the finding that is shown
 * @param decibans likelihood ratio for each cause, decibans
 * @param outside probability that the true value lies outside the limits
 */
public record EvaluatedRule(Rule rule, Finding finding, Map<Cause, Double> decibans, double outside) {

    /** Smaller likelihood ratios are left out. */
    private static final double LEAST_DECIBANS = 0.05;
    /** A finding whose condition holds with a lower probability is uncertain, whatever its value (ours). */
    private static final double SURELY = 0.8;

    /**
     * Evaluates a rule for a measurement.
     *
     * @param chemistry null where not known
     */
    static EvaluatedRule of(Rule rule, Measurement measurement, Chemistry chemistry) {
        Interval value = measurement.value();
        double celsius = measurement.temperatureC();
        double low = rule.low().map(l -> l.at(celsius, chemistry)).orElse(Double.NEGATIVE_INFINITY);
        double high = rule.high().map(l -> l.at(celsius, chemistry)).orElse(Double.POSITIVE_INFINITY);
        SideLikelihoods sides = SideLikelihoods.of(rule, value, low, high);
        Map<Cause, Double> decibans = new EnumMap<>(Cause.class);
        for (Cause cause : Cause.values()) {
            double weight = given(sides.decibans(rule, cause), measurement.applies());
            if (Math.abs(weight) >= LEAST_DECIBANS) {
                decibans.put(cause, weight);
            }
        }
        Result result = measurement.applies() < SURELY
                ? Result.UNCERTAIN
                : value.low() >= low && value.high() <= high
                        ? Result.INSIDE
                        : value.high() < low || value.low() > high ? Result.OUTSIDE : Result.UNCERTAIN;
        String side = value.value() < low ? "below" : value.value() > high ? "above" : "inside";
        return new EvaluatedRule(rule, finding(rule, measurement, low, high, result, side), decibans, sides.outside());
    }

    /** Likelihood ratio of a measurement that means something with this probability only, decibans: p·r + 1 - p. */
    private static double given(double decibans, double probability) {
        return probability == 1
                ? decibans
                : 10 * StrictMath.log10(probability * StrictMath.pow(10, decibans / 10) + 1 - probability);
    }

    private static Finding finding(
            Rule rule, Measurement measurement, double low, double high, Result result, String side) {
        String evidence =
                measurement.evidence() == null ? null : measurement.evidence().id();
        String id = evidence == null
                ? rule.id()
                : rule.id() + "/" + measurement.evidence().sha256().hex().substring(0, 8);
        Interval value = measurement.value();
        boolean exact = value.low() == value.high();
        boolean window = !Double.isInfinite(low) && !Double.isInfinite(high);
        double limit = Double.isInfinite(low) ? high : low;
        String said = Sentences.finding(rule, value, low, high, result, side);
        return new Finding(
                id,
                rule.id(),
                evidence,
                rule.quantity(),
                value.value(),
                exact ? null : value.low(),
                exact ? null : value.high(),
                rule.unit(),
                window && side.equals("above") ? high : limit,
                window ? high : null,
                rule.comparison(),
                result,
                rule.source(),
                said);
    }
}
