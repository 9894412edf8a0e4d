package org.voltdocket.diagnosis.quantity;

import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.kernel.Interval;

/**
 * A measured quantity.
 *
 * @param quantity name, as in {@code sensor-gain}
 * @param evidence the item it was measured in; null if it depends on facts or several items
 * @param value in the quantity's unit, with its 95 % interval
 * @param temperatureC for limits that depend on it, °C; NaN where not known
 * @param applies probability that the condition which gives the value its meaning holds, 0 to 1; for the current into a low
 *     battery, that the battery was low
 */
public record Measurement(String quantity, Evidence evidence, Interval value, double temperatureC, double applies) {

    public Measurement(String quantity, Evidence evidence, Interval value, double temperatureC) {
        this(quantity, evidence, value, temperatureC, 1);
    }

    public static Measurement of(String quantity, Evidence evidence, Interval value) {
        return new Measurement(quantity, evidence, value, Double.NaN);
    }

    public static Measurement exact(String quantity, Evidence evidence, double value) {
        return of(quantity, evidence, Interval.exact(value));
    }

    /** The same at a temperature, °C. */
    public Measurement at(double celsius) {
        return new Measurement(quantity, evidence, value, celsius, applies);
    }

    /** The same with a probability that its condition holds, 0 to 1. */
    public Measurement given(double probability) {
        return new Measurement(quantity, evidence, value, temperatureC, probability);
    }
}
