package org.voltdocket.assessment.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * A requirement of the OWASP Application Security Verification Standard and how the server meets it, as
 * {@code shared/security/asvs-level-2.txt} states it.
 *
 * @param number such as {@code 1.2.4}
 * @param text the requirement in our own words
 * @param state {@code met}, {@code partly}, {@code open}, {@code operator} or {@code none}
 * @param where it is met, or why there is nothing to meet
 * @param tests names of test classes
 * @param open what is missing
 */
public record SecurityRequirement(
        String number, String text, String state, String where, List<String> tests, String open) {

    private static final String FILE = "/shared/security/asvs-level-2.txt";
    private static final int COLUMNS = 6;

    /** Number of the chapter. */
    public String chapter() {
        return number.replaceFirst("\\..*", "");
    }

    static List<SecurityRequirement> all() {
        try (InputStream in = SecurityRequirement.class.getResourceAsStream(FILE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(SecurityRequirement::parse)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SecurityRequirement parse(String line) {
        String[] cells = Arrays.stream(line.split("\\|", -1)).map(String::strip).toArray(String[]::new);
        if (cells.length != COLUMNS) {
            throw new IllegalStateException(FILE + " needs " + COLUMNS + " columns: " + line);
        }
        List<String> tests = cells[4].isEmpty() ? List.of() : List.of(cells[4].split(", *"));
        return new SecurityRequirement(cells[0], cells[1], cells[2], cells[3], tests, cells[5]);
    }
}
