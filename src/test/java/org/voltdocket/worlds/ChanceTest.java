package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChanceTest {

    @Test
    void aPartDoesNotDependOnWhatWasDrawnBefore() {
        Chance one = new Chance(7);
        double first = one.of("part").next();
        one.next();
        assertThat(one.of("part").next()).isEqualTo(first);
        assertThat(one.of("other").next()).isNotEqualTo(first);
    }

    @Test
    void momentsAreThoseOfTheDistributions() {
        Chance chance = new Chance(1);
        int n = 200_000;
        double uniform = 0;
        double normal = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            uniform += chance.next();
            double z = chance.normal();
            normal += z;
            squares += z * z;
        }
        assertThat(uniform / n).isCloseTo(0.5, within(0.003));
        assertThat(normal / n).isCloseTo(0, within(0.01));
        assertThat(squares / n).isCloseTo(1, within(0.015));
    }
}
