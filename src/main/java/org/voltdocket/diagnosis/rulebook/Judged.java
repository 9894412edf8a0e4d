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
 * A measurement set against one row.
 *
 * @param rule the row
 * @param finding what is shown
 * @param decibans what it gives each cause before groups are bounded
 * @param outside probability that the true value lies outside the limits
 */
public record Judged(Rule rule, Finding finding, Map<Cause, Double> decibans, double outside) {

    /** How often a value lies outside in cases that the row has nothing to do with (ours). */
    private static final double RARELY = 0.1;

    /**
     * Judges a measurement. Where its interval straddles a limit the weights of the sides are mixed, 10·log10
     * Σ p·10^(w/10), by the probability p that the true value lies there: its error taken as normal within the plausible
     * range, each side's likelihood spread over what of that range belongs to it, and a value outside held to be rare
     * beforehand. A measurement that tells nothing leaves p at that rarity, whatever it reads.
     *
     * @param chemistry null where not known
     */
    static Judged of(Rule rule, Measurement measurement, Chemistry chemistry) {
        Interval value = measurement.value();
        double celsius = measurement.temperatureC();
        double low = rule.low().map(l -> l.at(celsius, chemistry)).orElse(Double.NEGATIVE_INFINITY);
        double high = rule.high().map(l -> l.at(celsius, chemistry)).orElse(Double.POSITIVE_INFINITY);
        double[] p = chances(rule, value, low, high);
        Map<Cause, Double> decibans = new EnumMap<>(Cause.class);
        for (Cause cause : Cause.values()) {
            double odds = p[0] * ratio(rule.below().get(cause))
                    + p[1] * ratio(rule.inside().get(cause))
                    + p[2] * ratio(rule.above().get(cause));
            double weight = 10 * StrictMath.log10(odds);
            if (Math.abs(weight) >= 0.05) {
                decibans.put(cause, weight);
            }
        }
        Result result = value.low() >= low && value.high() <= high
                ? Result.INSIDE
                : value.high() < low || value.low() > high ? Result.OUTSIDE : Result.UNCERTAIN;
        String side = value.value() < low ? "below" : value.value() > high ? "above" : "inside";
        return new Judged(rule, finding(rule, measurement, low, high, result, side), decibans, p[0] + p[2]);
    }

    /** Probabilities that the true value lies below, inside and above the limits. */
    private static double[] chances(Rule rule, Interval value, double low, double high) {
        if (value.low() == value.high()) {
            boolean under = value.value() < low;
            boolean over = value.value() > high;
            return new double[] {under ? 1 : 0, under || over ? 0 : 1, over ? 1 : 0};
        }
        Rule.Range all = range(rule, value);
        double[] edges = {all.low(), clip(low, all), clip(high, all), all.high()};
        boolean window = rule.low().isPresent() && rule.high().isPresent();
        double[] before = {window ? RARELY / 2 : RARELY, 1 - RARELY, window ? RARELY / 2 : RARELY};
        double[] p = new double[3];
        double sum = 0;
        for (int side = 0; side < 3; side++) {
            double mass = Math.max(0, chanceBelow(value, edges[side + 1]) - chanceBelow(value, edges[side]));
            double room = rule.plausible().isEmpty() ? 1 : Math.max(1e-6, edges[side + 1] - edges[side]);
            p[side] = mass * before[side] / room;
            sum += p[side];
        }
        for (int side = 0; side < 3; side++) {
            p[side] /= sum;
        }
        return p;
    }

    /** Where the true value may lie at all: the plausible range, and what was measured. */
    private static Rule.Range range(Rule rule, Interval value) {
        return rule.plausible()
                .map(r -> new Rule.Range(Math.min(r.low(), value.value()), Math.max(r.high(), value.value())))
                .orElse(new Rule.Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    private static double clip(double limit, Rule.Range all) {
        return Math.max(all.low(), Math.min(all.high(), limit));
    }

    private static double ratio(Double decibans) {
        return decibans == null ? 1 : StrictMath.pow(10, decibans / 10);
    }

    private static double chanceBelow(Interval value, double limit) {
        if (Double.isInfinite(limit)) {
            return limit > 0 ? 1 : 0;
        }
        double reach = limit < value.value() ? value.value() - value.low() : value.high() - value.value();
        if (reach == 0) {
            return limit > value.value() ? 1 : 0;
        }
        return Normal.cumulative(Interval.Z95 * (limit - value.value()) / reach);
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
