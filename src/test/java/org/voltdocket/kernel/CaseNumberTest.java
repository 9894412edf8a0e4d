package org.voltdocket.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The check character: weights 1 to 6 modulo the prime 31. A single wrong character changes the sum by weight times
 * difference, a swap of neighbours by their difference, and neither is a multiple of 31 (the argument of ISO/IEC 7064
 * for prime moduli); so all of them are tried.
 */
class CaseNumberTest {

    private static final String ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXY";
    private static final int[] PLACES = {2, 3, 4, 6, 7, 8, 10};

    @Test
    void everySingleSubstitutionIsCaught() {
        eachSample(number -> {
            for (int place : PLACES) {
                for (char c : ALPHABET.toCharArray()) {
                    if (c != number.charAt(place)) {
                        assertRefused(number.substring(0, place) + c + number.substring(place + 1));
                    }
                }
            }
        });
    }

    @Test
    void everySwapOfNeighboursIsCaught() {
        eachSample(number -> {
            for (int i = 0; i + 1 < PLACES.length; i++) {
                int a = PLACES[i];
                int b = PLACES[i + 1];
                if (number.charAt(a) == number.charAt(b)) {
                    continue;
                }
                char[] swapped = number.toCharArray();
                swapped[a] = number.charAt(b);
                swapped[b] = number.charAt(a);
                assertRefused(new String(swapped));
            }
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 1, 30, 31, 4711, 887_503_680L})
    void readsWhatItWrites(long ordinal) {
        CaseNumber number = CaseNumber.of(ordinal);
        assertThat(CaseNumber.parse(number.value())).isEqualTo(number);
        String spoken =
                number.value().replace("-", " ").toLowerCase().replace('0', 'o').replace('1', 'l');
        assertThat(CaseNumber.parse(spoken)).isEqualTo(number);
        assertThat(CaseNumber.parse(number.value().substring(2).replace("-", "")))
                .isEqualTo(number);
    }

    @Test
    void numbersOfDifferentCasesDiffer() {
        assertThat(CaseNumber.of(1)).isNotEqualTo(CaseNumber.of(2));
        assertThatThrownBy(() -> CaseNumber.of(-1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CaseNumber.of(887_503_681L)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "V", "V-000", "V-000-000-00", "X-000-001-6", "V-00U-000-0", "hello"})
    void whatIsNoNumberIsRefused(String text) {
        assertThatThrownBy(() -> CaseNumber.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(text);
    }

    @Test
    void theExampleInTheMessageIsANumber() {
        String message = messageOf("nonsense");
        String example = message.replaceAll("^A case number looks like (\\S+);.*$", "$1");
        assertThat(CaseNumber.parse(example).value()).isEqualTo(example);
    }

    private static String messageOf(String text) {
        try {
            CaseNumber.parse(text);
            throw new AssertionError("read " + text);
        } catch (IllegalArgumentException e) {
            return e.getMessage();
        }
    }

    private static void eachSample(java.util.function.Consumer<String> check) {
        Random random = new Random(31);
        for (int i = 0; i < 200; i++) {
            check.accept(
                    CaseNumber.of((long) (random.nextDouble() * 887_503_681L)).value());
        }
    }

    private static void assertRefused(String number) {
        assertThatThrownBy(() -> new CaseNumber(number)).as(number).isInstanceOf(IllegalArgumentException.class);
    }
}
