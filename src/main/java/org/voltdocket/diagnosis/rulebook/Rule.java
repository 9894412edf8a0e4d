package org.voltdocket.diagnosis.rulebook;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;

/**
 * One rule of the rule book.
 *
 * @param id stable identifier; also the key of its sentences
 * @param quantity the quantity that is compared with the limits
 * @param low lower limit; empty if there is none
 * @param high upper limit; empty if there is none
 * @param unit of value and limits
 * @param source where the limit comes from; "ours" where it is our choice
 * @param group rules of one group depend on one physical fact; only the strongest of them counts for a cause
 * @param control kinds of charging control it applies to; all if empty
 * @param decides what the rule decides about the battery itself
 * @param below likelihood ratios by cause for a value below the limits, decibans
 * @param inside likelihood ratios for a value inside, decibans
 * @param above likelihood ratios for a value above, decibans
 * @param plausible range of possible true values; a measurement with a wide interval then has little weight
 * @param examples values with the result that they must give
 * @param cases how many generated cases support the weights, by side
 */
public record Rule(
        String id,
        String quantity,
        Optional<Limit> low,
        Optional<Limit> high,
        String unit,
        String source,
        String group,
        List<ChargingControl> control,
        Decides decides,
        Map<Cause, Double> below,
        Map<Cause, Double> inside,
        Map<Cause, Double> above,
        Optional<Range> plausible,
        List<Example> examples,
        Map<String, Integer> cases) {

    /** A rule whose weights no case supports. */
    public Rule(
            String id,
            String quantity,
            Optional<Limit> low,
            Optional<Limit> high,
            String unit,
            String source,
            String group,
            List<ChargingControl> control,
            Decides decides,
            Map<Cause, Double> below,
            Map<Cause, Double> inside,
            Map<Cause, Double> above,
            Optional<Range> plausible,
            List<Example> examples) {
        this(
                id, quantity, low, high, unit, source, group, control, decides, below, inside, above, plausible,
                examples, Map.of());
    }

    /** From low to high, in the row's unit. */
    public record Range(double low, double high) {}

    /** What a rule decides about the battery itself. */
    public enum Decides {
        /** Nothing. */
        NOTHING,
        /** Outside, the battery failed; inside, it passed. */
        BATTERY,
        /** Outside, the battery failed; inside says nothing about what it delivers. */
        FAILURE,
        /** Outside means too little charge to judge. */
        CHARGE;

        /** Whether a value outside the limits means that the battery failed. */
        public boolean failsBattery() {
            return this == BATTERY || this == FAILURE;
        }
    }

    /**
     * A limit: one value, a value by temperature in °C, or a value by chemistry.
     *
     * @param value the plain limit, or the one for a chemistry that is not named
     */
    public record Limit(
            double value,
            Optional<org.voltdocket.diagnosis.quantity.LookupTable> byTemperature,
            Map<Chemistry, Double> byChemistry) {

        /** The limit at a temperature (NaN: not known) for a chemistry (null: not known). */
        public double at(double celsius, Chemistry chemistry) {
            if (byTemperature.isPresent()) {
                return byTemperature.get().at(Double.isNaN(celsius) ? 20 : celsius);
            }
            return chemistry == null ? value : byChemistry.getOrDefault(chemistry, value);
        }
    }

    /**
     * An example that the row must meet.
     *
     * @param celsius temperature, NaN where it does not matter
     * @param result {@code inside}, {@code below} or {@code above}
     */
    public record Example(double value, double celsius, String result) {}

    /** {@code at-least}, {@code at-most} or {@code within}. */
    public String comparison() {
        return low.isPresent() ? (high.isPresent() ? "within" : "at-least") : "at-most";
    }

    /** Whether the row applies to a kind of charging control (null: not known). */
    public boolean appliesTo(ChargingControl kind) {
        return control.isEmpty() || control.contains(kind == null ? ChargingControl.UNKNOWN : kind);
    }
}
