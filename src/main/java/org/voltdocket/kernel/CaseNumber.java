package org.voltdocket.kernel;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Number of a case: {@code V-} six characters, a hyphen between the halves, and a check character, as in
 * {@code V-0K3-9TF-R}. The alphabet is Crockford's base 32 (no I, L, O, U), so it reads aloud; the check character is
 * the weighted sum modulo 31, which catches every single wrong character and every swap of neighbours.
 *
 * @param value the text with hyphens
 */
public record CaseNumber(String value) implements Comparable<CaseNumber> {

    private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXY";
    private static final int BASE = ALPHABET.length();
    private static final int DIGITS = 6;
    private static final long LIMIT = 887_503_681L; // 31 to the power of 6
    private static final Pattern FORM =
            Pattern.compile("V-[" + ALPHABET + "]{3}-[" + ALPHABET + "]{3}-[" + ALPHABET + "]");

    public CaseNumber {
        if (value == null || !FORM.matcher(value).matches()) {
            throw new IllegalArgumentException(
                    "A case number looks like V-0K3-9TF-R; read '" + (value == null ? "" : value) + "'.");
        }
        String digits = value.substring(2, 5) + value.substring(6, 9);
        if (check(digits) != value.charAt(10)) {
            throw new IllegalArgumentException("The check character of case number " + value
                    + " does not fit: one character was misheard or two were swapped.");
        }
    }

    /**
     * The number of the n-th case.
     *
     * @param ordinal 0 to 887 503 680
     */
    public static CaseNumber of(long ordinal) {
        if (ordinal < 0 || ordinal >= LIMIT) {
            throw new IllegalArgumentException("case ordinal out of range: " + ordinal);
        }
        char[] digits = new char[DIGITS];
        long rest = ordinal;
        for (int i = DIGITS - 1; i >= 0; i--) {
            digits[i] = ALPHABET.charAt((int) (rest % BASE));
            rest /= BASE;
        }
        String d = new String(digits);
        return new CaseNumber("V-" + d.substring(0, 3) + "-" + d.substring(3) + "-" + check(d));
    }

    /**
     * Reads a number as a person types it: any case, hyphens and blanks free, I and L taken for 1, O for 0.
     *
     * @throws IllegalArgumentException if it is no case number or its check character does not fit
     */
    public static CaseNumber parse(String text) {
        String bare = text == null ? "" : text.replaceAll("[\\s-]+", "").toUpperCase(Locale.ROOT);
        if (bare.length() == 8 && bare.charAt(0) == 'V') {
            bare = bare.substring(1);
        }
        if (bare.length() != 7) {
            throw new IllegalArgumentException(
                    "A case number looks like V-0K3-9TF-R; read '" + (text == null ? "" : text) + "'.");
        }
        String mended = bare.replace('I', '1').replace('L', '1').replace('O', '0');
        return new CaseNumber("V-" + mended.substring(0, 3) + "-" + mended.substring(3, 6) + "-" + mended.charAt(6));
    }

    /** Weights 1 to 6 and a prime base: a single error or a swap always changes the sum. */
    private static char check(String digits) {
        int sum = 0;
        for (int i = 0; i < digits.length(); i++) {
            sum += (i + 1) * ALPHABET.indexOf(digits.charAt(i));
        }
        return ALPHABET.charAt(sum % BASE);
    }

    @Override
    public int compareTo(CaseNumber other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
