package org.voltdocket.diagnosis;

import java.util.List;
import java.util.Map;

/**
 * The result of assessing a case. It has no date: the server stores when a case was assessed.
 *
 * @param rulebook edition of the rule book
 * @param batteryReason why the battery has its verdict
 * @param causes all ten, most probable first; probabilities add to 1
 * @param findings in canonical order
 * @param estimates by name ({@code sensorOffsetA}, …), in a fixed order; one that the evidence cannot carry is absent
 * @param regimes by evidence id, for each recording, covering it without gap
 * @param said the decision in one sentence
 * @param nextSteps what to do next, most useful first
 * @param missing what would make the verdict more certain: stable identifiers such as {@code charging-test}
 */
public record Assessment(
        String rulebook,
        BatteryVerdict batteryVerdict,
        BatteryReason batteryReason,
        Leaning leaning,
        List<RankedCause> causes,
        List<Finding> findings,
        Map<String, Estimate> estimates,
        Map<String, List<RegimeSpan>> regimes,
        String said,
        List<String> nextSteps,
        List<String> missing) {

    /**
     * A cause with its probability and the weights of evidence behind it.
     *
     * @param probability 0 to 1
     * @param weights likelihood ratio of each finding in decibans (10·log10), largest first
     */
    public record RankedCause(Cause cause, double probability, List<Weight> weights) {}

    /**
     * The likelihood ratio that a finding contributes to a cause.
     *
     * @param finding id of the finding
     * @param decibans 10·log10 of the likelihood ratio; positive speaks for the cause
     */
    public record Weight(String finding, double decibans) {}

    /**
     * A measured quantity compared with its limit.
     *
     * @param id unique within the assessment: the rule's id, with a part of the evidence's digest where it rests on one
     *     item
     * @param rule id of the rule book's row
     * @param evidence id of the evidence; null where it rests on facts or several items
     * @param quantity what was measured, as the rule book names it
     * @param value null where the finding has no number
     * @param low lower end of the 95 % interval, null where not known
     * @param high upper end, null where not known
     * @param limit null where the rule has none
     * @param limitHigh upper limit of a window, null elsewhere
     * @param comparison how the value is compared with the limit: {@code at-most}, {@code at-least}, {@code within}, {@code
     *     is}
     * @param source where the limit comes from
     * @param said one sentence for a person
     */
    public record Finding(
            String id,
            String rule,
            String evidence,
            String quantity,
            Double value,
            Double low,
            Double high,
            String unit,
            Double limit,
            Double limitHigh,
            String comparison,
            Result result,
            String source,
            String said) {}

    /**
     * An estimate with its 95 % interval.
     *
     * @param unit unit of all three
     */
    public record Estimate(double value, double low, double high, String unit) {}

    /**
     * A stretch of a recording.
     *
     * @param from s from the start
     * @param to s from the start, after {@code from}
     */
    public record RegimeSpan(double from, double to, Regime regime) {}
}
