package org.voltdocket.diagnosis.quantity;

import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.Facts;

/**
 * The facts that measurements depend on, with mid-range values for those that are not known.
 *
 * @param testTemperatureC mean temperature of the tests, °C; NaN where none tells it
 */
public record MeasurementContext(Facts facts, double testTemperatureC) {

    /** Middle of the passenger-car range, Ah (ours). */
    private static final double MIDDLE_CAPACITY_AH = 70;
    /** Room temperature, °C, where nothing tells another. */
    private static final double ROOM_C = 20;

    /** May be null: not known. */
    public Chemistry chemistry() {
        return facts.battery().chemistry();
    }

    /** Nominal capacity, Ah. */
    public double capacityAh() {
        Double known = facts.battery().capacityAh();
        return known == null ? MIDDLE_CAPACITY_AH : known;
    }

    /** Size against a battery of 70 Ah: currents that count as "about none" grow with it. */
    public double size() {
        return capacityAh() / MIDDLE_CAPACITY_AH;
    }

    /** °C. */
    public double temperatureC() {
        return Double.isNaN(testTemperatureC) ? ROOM_C : testTemperatureC;
    }

    /** Slope of the rest voltage in the middle of the range, V per Ah. */
    public double slopeVPerAh() {
        return RestVoltage.slope(chemistry(), 60) * 100 / capacityAh();
    }
}
