package org.voltdocket.diagnosis.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.kernel.Interval;

/** The sentences of an assessment by key; {@code {value}}, {@code {limit}} and others are filled in; {@code {size}} is the value without its sign. */
public final class Sentences {

    private static final String FILE = "/messages/diagnosis.properties";
    private static final Properties TEXT = load();

    private Sentences() {}

    private static Properties load() {
        Properties text = new Properties();
        try (InputStream in = Sentences.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException(FILE + " is missing from the program");
            }
            text.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text;
    }

    /**
     * A sentence without numbers.
     *
     * @throws IllegalArgumentException if there is none under this key
     */
    public static String plain(String key) {
        String text = TEXT.getProperty(key);
        if (text == null) {
            throw new IllegalArgumentException("no sentence under " + key);
        }
        return text;
    }

    /** Whether there is a sentence under this key. */
    public static boolean has(String key) {
        return TEXT.containsKey(key);
    }

    /** Keys of all sentences. */
    static Set<String> keys() {
        return TEXT.stringPropertyNames();
    }

    /** The sentence of a finding: {@code finding.<rule>.<below|inside|above>}, with a tail where it is uncertain. */
    static String finding(Rule rule, Interval value, double low, double high, Result result, String side) {
        String said = plain("finding." + rule.id() + "." + side)
                .replace("{value}", number(value.value(), rule.unit()))
                .replace("{size}", number(Math.abs(value.value()), rule.unit()))
                .replace("{low}", number(value.low(), rule.unit()))
                .replace("{high}", number(value.high(), rule.unit()))
                .replace("{least}", number(low, rule.unit()))
                .replace("{most}", number(high, rule.unit()));
        return result == Result.UNCERTAIN ? said + " " + plain("finding.uncertain") : said;
    }

    /** A number for display, with the decimals that suit its unit. */
    public static String number(double value, String unit) {
        int decimals = switch (unit) {
            case "V" -> 2;
            case "A", "Ah", "a" -> Math.abs(value) < 0.2 && unit.equals("A") ? 3 : 1;
            case "mΩ", "km/d", "Hz" -> 1;
            case "ratio", "s" -> 2;
            default -> 0;
        };
        String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return text.replace('-', '\u2212');
    }
}
