package org.voltdocket.returned.sampling;

import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.voltdocket.kernel.Sha256;

/**
 * A reproducible random draw: numbers are ordered by the SHA-256 of {@code seed|number} in
 * hexadecimal, smallest first.
 */
public final class RandomDraw {

    private RandomDraw() {}

    /**
     * All numbers in the order drawn. It does not depend on the order given.
     *
     * @param numbers no number twice
     */
    public static List<String> order(long seed, Collection<String> numbers) {
        return numbers.stream()
                .sorted(Comparator.comparing((String number) -> ticket(seed, number))
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** What a number's place follows from. */
    public static String ticket(long seed, String number) {
        return Sha256.of((seed + "|" + number).getBytes(StandardCharsets.UTF_8)).hex();
    }
}
