package org.voltdocket.kernel;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * Vehicle identification number: 17 digits and letters without I, O and Q (ISO 3779).
 *
 * <p>The check digit at position 9 (49 CFR 565.15(c)) binds only where the country of the first characters uses it
 * (North America, 1 to 5 and 7F to 70); elsewhere it is information.
 *
 * @param value the normalised 17 characters
 */
public record Vin(String value) implements Comparable<Vin> {

    private static final Pattern FORM = Pattern.compile("[A-HJ-NPR-Z0-9]{17}");
    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final String LETTER_VALUES = "12345678123457923456789";
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
    private static final String YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789";
    /** In the order of the second character of a world manufacturer identifier: letters first, then digits, 0 last. */
    private static final String WMI_ORDER = "ABCDEFGHJKLMNPRSTUVWXYZ1234567890";

    public Vin {
        if (value == null || !FORM.matcher(value).matches()) {
            throw new IllegalArgumentException(complaint(value == null ? "" : value));
        }
        if (checkDigitBinds(value) && checkDigit(value) != value.charAt(8)) {
            throw new IllegalArgumentException("The check digit of VIN " + value + " (position 9) is "
                    + value.charAt(8) + ", but the other characters give " + checkDigit(value)
                    + ". One character was misread: compare it with the vehicle's plate.");
        }
    }

    /**
     * Reads a VIN as typed or scanned: spaces and hyphens removed, upper case, and the leading {@code I} that some
     * Code 39 labels carry before the 17 characters stripped.
     *
     * @throws IllegalArgumentException if it is no VIN, or its binding check digit is wrong
     */
    public static Vin parse(String text) {
        return new Vin(normal(text));
    }

    /**
     * What a misread VIN may have been: I read for 1, O and Q for 0. To be confirmed by a person, never silent.
     *
     * @return the suggestion, or empty where the text has none of these or is no VIN even so
     */
    public static Optional<Vin> suggestion(String text) {
        String normal = normal(text);
        String mended = normal.replace('I', '1').replace('O', '0').replace('Q', '0');
        if (mended.equals(normal) || !FORM.matcher(mended).matches()) {
            return Optional.empty();
        }
        boolean wrong = checkDigitBinds(mended) && checkDigit(mended) != mended.charAt(8);
        return wrong ? Optional.empty() : Optional.of(new Vin(mended));
    }

    /** Whether the check digit at position 9 fits the other characters, whether it binds or not. */
    public boolean checkDigitFits() {
        return checkDigit(value) == value.charAt(8);
    }

    /** Whether a wrong check digit would refuse this VIN. */
    public boolean checkDigitBinds() {
        return checkDigitBinds(value);
    }

    /**
     * Model year from position 10, in the 30-year cycle 1980 to 2039; a letter at position 7 says 2010 or later (49 CFR
     * 565.15(b), light vehicles). Binding in North America only, so answered only there.
     */
    public OptionalInt modelYear() {
        int code = YEAR_CODES.indexOf(value.charAt(9));
        if (code < 0 || !checkDigitBinds()) {
            return OptionalInt.empty();
        }
        boolean later = Character.isLetter(value.charAt(6));
        return OptionalInt.of(1980 + code + (later ? 30 : 0));
    }

    /**
     * Check digit of 17 characters: weighted sum modulo 11, 10 written X (49 CFR 565.15(c)). The integer remainder
     * is used: a published decimal table has a rounding error.
     */
    public static char checkDigit(String vin) {
        int sum = 0;
        for (int i = 0; i < 17; i++) {
            sum += WEIGHTS[i] * worth(vin.charAt(i));
        }
        int remainder = sum % 11;
        return remainder == 10 ? 'X' : (char) ('0' + remainder);
    }

    private static int worth(char c) {
        return Character.isDigit(c) ? c - '0' : LETTER_VALUES.charAt(LETTERS.indexOf(c)) - '0';
    }

    private static boolean checkDigitBinds(String vin) {
        char first = vin.charAt(0);
        if (first >= '1' && first <= '5') {
            return true;
        }
        return first == '7' && WMI_ORDER.indexOf(vin.charAt(1)) >= WMI_ORDER.indexOf('F');
    }

    private static String normal(String text) {
        String bare = text == null ? "" : text.replaceAll("[\\s-]+", "").toUpperCase(Locale.ROOT);
        return bare.length() == 18 && bare.charAt(0) == 'I' ? bare.substring(1) : bare;
    }

    private static String complaint(String text) {
        if (text.length() != 17) {
            return "A VIN has 17 characters; '" + text + "' has " + text.length() + ". Copy all of it.";
        }
        for (int i = 0; i < 17; i++) {
            char c = text.charAt(i);
            if (LETTERS.indexOf(c) < 0 && (c < '0' || c > '9')) {
                String hint = suggestion(text)
                        .map(v -> " Did you read " + v.value() + "?")
                        .orElse("");
                return "A VIN is digits and letters without I, O and Q; position " + (i + 1) + " is '" + c + "'."
                        + hint;
            }
        }
        return "'" + text + "' is no VIN.";
    }

    @Override
    public int compareTo(Vin other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
