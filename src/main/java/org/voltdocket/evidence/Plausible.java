package org.voltdocket.evidence;

import org.voltdocket.diagnosis.Channel;

/**
 * What an instrument can show at all. The voltages are the published promise of the file format; the others are wide
 * by choice, to catch a wrong unit or a shifted column and nothing else.
 *
 * @param low least value taken, in the channel's unit
 * @param high greatest value taken
 */
record Plausible(double low, double high, String unit) {

    static Plausible of(Channel channel) {
        return switch (channel) {
            case MEASURED_V, REPORTED_V -> new Plausible(-2, 40, "V");
            case MEASURED_A, REPORTED_A -> new Plausible(-3000, 3000, "A");
            case REPORTED_SOC -> new Plausible(-5, 110, "%");
            case ENGINE_RPM -> new Plausible(0, 20_000, "1/min");
            case SPEED -> new Plausible(0, 500, "km/h");
            case COOLANT, AMBIENT -> new Plausible(-60, 250, "°C");
        };
    }

    boolean holds(double value) {
        return value >= low && value <= high;
    }

    String range() {
        return plain(low) + " to " + plain(high) + " " + unit;
    }

    private static String plain(double value) {
        return (value < 0 ? "−" : "") + (long) Math.abs(value);
    }
}
