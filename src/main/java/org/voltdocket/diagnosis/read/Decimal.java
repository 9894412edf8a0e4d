package org.voltdocket.diagnosis.read;

import java.nio.charset.StandardCharsets;

/**
 * Reads decimal numbers from bytes to the last bit. Up to 2<sup>53</sup> and ten to the power of ±22 both the digits
 * and the power are exact doubles, so one multiplication or division rounds correctly (W. D. Clinger, How to Read
 * Floating Point Numbers Accurately, 1990); everything else goes through the Java library.
 *
 * <p>Where a decimal comma is allowed, the first mark seen holds for the whole file: a file that writes both may use
 * one of them to group thousands, and would be misread.
 */
final class Decimal {

    private static final double[] POWERS = new double[23];

    static {
        for (int i = 0; i < POWERS.length; i++) {
            POWERS[i] = Double.parseDouble("1e" + i);
        }
    }

    private final boolean commaAllowed;
    private byte mark;
    private byte otherMark;

    Decimal(boolean commaAllowed) {
        this.commaAllowed = commaAllowed;
        this.mark = (byte) (commaAllowed ? 0 : '.');
    }

    /**
     * The number in the bytes; NaN if there is none ({@link #complaint} says why), infinite if it is beyond a double.
     */
    double parse(byte[] b, int from, int to) {
        int i = from;
        boolean negative = false;
        if (i < to && (b[i] == '-' || b[i] == '+')) {
            negative = b[i++] == '-';
        }
        long digits = 0;
        int significant = 0;
        int scale = 0;
        int any = 0;
        boolean fraction = false;
        for (; i < to; i++) {
            byte c = b[i];
            if (c >= '0' && c <= '9') {
                any++;
                if (significant > 0 || c != '0') {
                    significant++;
                }
                if (significant <= 18) {
                    digits = digits * 10 + (c - '0');
                }
                if (fraction) {
                    scale--;
                }
            } else if ((c == '.' || c == ',') && !fraction) {
                if (c != mark && !adopt(c)) {
                    return Double.NaN;
                }
                fraction = true;
            } else {
                break;
            }
        }
        if (any == 0) {
            return Double.NaN;
        }
        if (i < to) {
            int exponent = exponent(b, i, to);
            if (exponent == Integer.MIN_VALUE) {
                return Double.NaN;
            }
            scale += exponent;
        }
        if (significant <= 18 && digits <= 1L << 53 && scale >= -22 && scale <= 22) {
            double value = scale < 0 ? digits / POWERS[-scale] : digits * POWERS[scale];
            return negative ? -value : value;
        }
        return Double.parseDouble(javaText(b, from, to));
    }

    /** The same number rounded once to a float, not twice by way of the double. */
    float toFloat(double value, byte[] b, int from, int to) {
        boolean halfway = (Double.doubleToRawLongBits(value) & 0x1fff_ffffL) == 0x1000_0000L;
        boolean tiny = value != 0 && Math.abs(value) < 0x1p-125;
        return halfway || tiny ? Float.parseFloat(javaText(b, from, to)) : (float) value;
    }

    private boolean adopt(byte c) {
        if (mark == 0 && commaAllowed) {
            mark = c;
            otherMark = (byte) (c == '.' ? ',' : '.');
            return true;
        }
        return false;
    }

    private static int exponent(byte[] b, int at, int to) {
        if (b[at] != 'e' && b[at] != 'E') {
            return Integer.MIN_VALUE;
        }
        int i = at + 1;
        boolean negative = false;
        if (i < to && (b[i] == '-' || b[i] == '+')) {
            negative = b[i++] == '-';
        }
        if (i == to) {
            return Integer.MIN_VALUE;
        }
        int value = 0;
        for (; i < to; i++) {
            if (b[i] < '0' || b[i] > '9') {
                return Integer.MIN_VALUE;
            }
            value = Math.min(value * 10 + (b[i] - '0'), 100_000);
        }
        return negative ? -value : value;
    }

    /** What is wrong with text that {@link #parse} called no number. */
    String complaint(String text) {
        String bare = text.strip().toLowerCase(java.util.Locale.ROOT).replaceFirst("^[+-]", "");
        if (bare.equals("nan") || bare.equals("inf") || bare.equals("infinity")) {
            return "'" + shown(text) + "' is no measured value. Leave the cell blank where nothing was sampled.";
        }
        boolean comma = text.indexOf(',') >= 0;
        boolean point = text.indexOf('.') >= 0;
        if (comma && !commaAllowed) {
            return "'" + shown(text) + "' is not a number: where the delimiter is a comma, decimals take a point.";
        }
        if (comma && point || text.indexOf((char) otherMark) >= 0 && otherMark != 0) {
            return "'" + shown(text) + "' cannot be told: this file writes decimals with '"
                    + (char) (mark == 0 ? '.' : mark) + "'. Write numbers without grouping and with one decimal mark.";
        }
        return "'" + shown(text) + "' is not a number. Write it like -12.5 or 1.25e3, or leave the cell blank.";
    }

    private static String shown(String text) {
        String printable = TextCleaner.printable(text);
        return printable.length() <= 40 ? printable : printable.substring(0, 40) + "…";
    }

    private static String javaText(byte[] b, int from, int to) {
        return new String(b, from, to - from, StandardCharsets.ISO_8859_1).replace(',', '.');
    }
}
