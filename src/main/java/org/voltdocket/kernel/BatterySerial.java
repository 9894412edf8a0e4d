package org.voltdocket.kernel;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Serial of a battery as printed on its label: 4 to 40 of {@code A-Z 0-9 - . /}, spaces removed, upper case.
 *
 * @param value the normalised text
 */
public record BatterySerial(String value) implements Comparable<BatterySerial> {

    private static final Pattern FORM = Pattern.compile("[A-Z0-9./-]{4,40}");

    public BatterySerial {
        if (value == null || !FORM.matcher(value).matches()) {
            throw new IllegalArgumentException("A battery serial is 4 to 40 of the characters A-Z 0-9 - . /; read '"
                    + (value == null ? "" : value) + "'. Copy it from the battery's label.");
        }
    }

    /**
     * Reads a serial as a person types it.
     *
     * @throws IllegalArgumentException if what remains after normalising is no serial
     */
    public static BatterySerial parse(String text) {
        String normal = text == null ? "" : text.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        return new BatterySerial(normal);
    }

    @Override
    public int compareTo(BatterySerial other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
