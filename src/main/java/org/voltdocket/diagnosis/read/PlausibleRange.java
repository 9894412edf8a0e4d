package org.voltdocket.diagnosis.read;

import org.voltdocket.diagnosis.Channel;

/**
 * The range that an instrument can show. The voltages are part of the published file format; the others are wide
 * on purpose: they catch a wrong unit or a shifted column.
 *
 * @param low least value taken, in the channel's unit
 * @param high greatest value taken
 */
public record PlausibleRange(double low, double high, String unit) {

    public static PlausibleRange of(Channel channel) {
        return switch (channel) {
            case MEASURED_V, REPORTED_V -> new PlausibleRange(-2, 40, "V");
            case MEASURED_A, REPORTED_A -> new PlausibleRange(-3000, 3000, "A");
            case REPORTED_SOC -> new PlausibleRange(-5, 110, "%");
            case ENGINE_RPM -> new PlausibleRange(0, 20_000, "1/min");
            case SPEED -> new PlausibleRange(0, 500, "km/h");
            case COOLANT, AMBIENT -> new PlausibleRange(-60, 250, "°C");
        };
    }

    /** Whether the value lies in the range; NaN does not. */
    public boolean holds(double value) {
        return value >= low && value <= high;
    }

    String range() {
        return plain(low) + " to " + plain(high) + " " + unit;
    }

    private static String plain(double value) {
        return (value < 0 ? "−" : "") + (long) Math.abs(value);
    }
}
