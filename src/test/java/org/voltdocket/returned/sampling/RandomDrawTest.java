package org.voltdocket.returned.sampling;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RandomDrawTest {

    /** Repeated with {@code printf '%s' '7|R-000001' | sha256sum}, which is how an outsider checks a draw. */
    @Test
    void theTicketIsThePlainDigest() {
        assertThat(RandomDraw.ticket(7, "R-000001")).startsWith("0ce2f61cedbb96a8");
    }

    @Test
    void theOrderFollowsFromSeedAndNumbersAlone() {
        List<String> numbers = IntStream.range(0, 200)
                .mapToObj(i -> String.format("R-%06d", i))
                .toList();
        List<String> shuffled = new ArrayList<>(numbers);
        Collections.shuffle(shuffled, new Random(3));
        assertThat(RandomDraw.order(42, shuffled))
                .isEqualTo(RandomDraw.order(42, numbers))
                .isNotEqualTo(RandomDraw.order(43, numbers))
                .containsExactlyInAnyOrderElementsOf(numbers);
    }

    /** Over many seeds everyone is drawn equally often: 10 of 40, chi-squared with 39 degrees of freedom below its 99.9 % point 72. */
    @Test
    void everyOneHasTheSameChance() {
        List<String> numbers =
                IntStream.range(0, 40).mapToObj(i -> String.format("R-%06d", i)).toList();
        int[] drawn = new int[40];
        int seeds = 2000;
        for (long seed = 0; seed < seeds; seed++) {
            RandomDraw.order(seed, numbers).subList(0, 10).forEach(number -> drawn[numbers.indexOf(number)]++);
        }
        double expected = seeds * 10 / 40.0;
        double chi = 0;
        for (int count : drawn) {
            chi += (count - expected) * (count - expected) / expected;
        }
        assertThat(chi).isLessThan(72);
    }
}
