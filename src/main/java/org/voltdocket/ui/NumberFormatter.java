package org.voltdocket.ui;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as a person reads them: decimal point, thin spaces between thousands, a true minus sign. */
final class NumberFormatter {

    private static final int DIGITS = 4;
    private static final int DECIMALS = 3;

    private NumberFormatter() {}

    static String plain(double value) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(DIGITS, RoundingMode.HALF_EVEN));
        if (rounded.scale() > DECIMALS) {
            rounded = rounded.setScale(DECIMALS, RoundingMode.HALF_EVEN);
        }
        if (Math.abs(value) >= 1000) {
            rounded = new BigDecimal(value).setScale(0, RoundingMode.HALF_EVEN);
        }
        rounded = rounded.stripTrailingZeros();
        if (rounded.scale() < 0) {
            rounded = rounded.setScale(0);
        }
        String text = String.format(Locale.ROOT, "%,." + Math.max(0, rounded.scale()) + "f", rounded);
        return minus(text.replace(',', '\u202f'));
    }

    static String signed(double value) {
        String text = String.format(Locale.ROOT, "%+.1f", value);
        return minus(text.equals("-0.0") || text.equals("+0.0") ? "0.0" : text);
    }

    static String percent(double p) {
        if (p > 0 && p < 0.005) {
            return p < 0.001 ? "< 0.1 %" : String.format(Locale.ROOT, "%.1f %%", p * 100);
        }
        if (p < 1 && p >= 0.995) {
            return p > 0.999 ? "> 99.9 %" : String.format(Locale.ROOT, "%.1f %%", Math.floor(p * 1000) / 10);
        }
        return String.format(Locale.ROOT, "%.0f %%", p * 100);
    }

    static String ratio(double ratio) {
        if (ratio >= 1000) {
            return "1\u202f000";
        }
        return ratio >= 10
                ? String.format(Locale.ROOT, "%.0f", ratio)
                : String.format(Locale.ROOT, "%.1f", ratio).replace(".0", "");
    }

    private static String minus(String text) {
        return text.replace('-', '\u2212');
    }
}
