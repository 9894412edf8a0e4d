package org.voltdocket.kernel;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.regex.Pattern;

/**
 * An amount in a currency of ISO 4217.
 *
 * @param amount 0 to 9 999 999 999.99, with as many decimals as the currency has, at most two
 */
public record Money(BigDecimal amount, Currency currency) {

    private static final Pattern AMOUNT = Pattern.compile("\\d{1,10}(\\.\\d{1,2})?");
    private static final int MOST_DECIMALS = 2;

    public Money {
        amount = amount.setScale(decimals(currency), RoundingMode.UNNECESSARY);
    }

    /**
     * Reads an amount above zero, such as {@code 129.90} of {@code EUR}.
     *
     * @throws RequestException if either cannot be right
     */
    public static Money read(String amount, String currency) {
        return read(amount, currency(currency));
    }

    /** The same in a currency that is known already. */
    public static Money read(String amount, Currency currency) {
        Money money = readOrNothing(amount, currency);
        if (money.amount().signum() == 0) {
            throw RequestException.invalid(
                    "claim-refused", "amount", "'amount' is more than nothing; read '" + amount + "'");
        }
        return money;
    }

    /** The same, nothing allowed. */
    public static Money readOrNothing(String amount, Currency currency) {
        String text = amount == null ? "" : amount.strip();
        if (!AMOUNT.matcher(text).matches()) {
            throw RequestException.invalid(
                    "claim-refused",
                    "amount",
                    "'amount' is a text of digits with a decimal point, such as \"129.90\", with at most ten digits before"
                            + " it and two after; read " + (amount == null ? "nothing" : "'" + amount + "'"));
        }
        BigDecimal value = new BigDecimal(text);
        if (value.stripTrailingZeros().scale() > decimals(currency)) {
            throw RequestException.invalid(
                    "claim-refused",
                    "amount",
                    "'amount' has more decimals than " + currency.getCurrencyCode() + " knows; read '" + amount + "'");
        }
        return new Money(value, currency);
    }

    /** @throws RequestException if it is no currency of ISO 4217 */
    public static Currency currency(String code) {
        try {
            Currency currency = Currency.getInstance(code == null ? "" : code.strip());
            if (currency.getDefaultFractionDigits() >= 0) {
                return currency;
            }
        } catch (IllegalArgumentException e) {
            // said below
        }
        throw RequestException.invalid(
                "claim-refused",
                "currency",
                "'currency' is a currency's three capitals by ISO 4217, such as EUR; read "
                        + (code == null ? "nothing" : "'" + code + "'"));
    }

    private static int decimals(Currency currency) {
        return Math.min(currency.getDefaultFractionDigits(), MOST_DECIMALS);
    }

    /** The amount as JSON has it, without grouping. */
    public String text() {
        return amount.toPlainString();
    }

    /** Its currency's three letters. */
    public String code() {
        return currency.getCurrencyCode();
    }

    /** Amount and currency, such as {@code 129.90 EUR}. */
    @Override
    public String toString() {
        return text() + " " + code();
    }
}
