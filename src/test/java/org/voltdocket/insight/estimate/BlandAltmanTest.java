package org.voltdocket.insight.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class BlandAltmanTest {

    /** Bland and Altman 1986, table 1: first readings of peak flow by two meters, l/min; public copies agree with each other. */
    private static final double[] LARGE = {
        494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427
    };

    private static final double[] MINI = {
        512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451
    };

    private static double[] differences() {
        double[] differences = new double[LARGE.length];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = LARGE[i] - MINI[i];
        }
        return differences;
    }

    /** The paper: mean -2.1, s 38.8, bias -22.0 to 17.8; its lower limit's interval -114.3 to -45.1 lies around -2.1 - 2·38.8. */
    @Test
    void thePaper() {
        BlandAltman result = BlandAltman.of(differences());
        assertThat(result.bias().value()).isCloseTo(-2.1, within(0.05));
        assertThat(result.sd()).isCloseTo(38.8, within(0.05));
        assertThat(result.bias().low()).isCloseTo(-22.0, within(0.1));
        assertThat(result.bias().high()).isCloseTo(17.8, within(0.1));
        // the paper takes 3s²/n for the limits' variance, which is this one's for large n
        double half = (result.lower().high() - result.lower().low()) / 2;
        assertThat(half).isCloseTo((114.3 - 45.1) / 2, within(0.5));
        assertThat(result.biased()).isFalse();
    }

    /** The same data by another library's arithmetic, seen in a public test: limits -78.0959 and 73.8606. */
    @Test
    void anotherLibrary() {
        BlandAltman result = BlandAltman.of(differences());
        assertThat(result.bias().value()).isCloseTo(-2.11764705882, within(1e-10));
        assertThat(result.sd()).isCloseTo(38.7651298736, within(1e-9));
        assertThat(result.lower().value()).isCloseTo(-78.0959054849, within(1e-3));
        assertThat(result.upper().value()).isCloseTo(73.8606113673, within(1e-3));
    }

    /** Of 10 000 drawn samples of 20 pairs, 95 % hold the true bias, and about as many each true limit. */
    @Test
    void intervalsCoverWhatTheyPromise() {
        Random chance = new Random(20260304);
        int bias = 0;
        int lower = 0;
        for (int sample = 0; sample < 10_000; sample++) {
            double[] differences = new double[20];
            for (int i = 0; i < differences.length; i++) {
                differences[i] = -8 + 3 * chance.nextGaussian();
            }
            BlandAltman result = BlandAltman.of(differences);
            bias += result.bias().low() <= -8 && -8 <= result.bias().high() ? 1 : 0;
            double limit = -8 - 1.959964 * 3;
            lower += result.lower().low() <= limit && limit <= result.lower().high() ? 1 : 0;
        }
        assertThat(bias).isBetween(9435, 9565);
        assertThat(lower).isBetween(9200, 9700);
    }

    @Test
    void twoPairsSayNothing() {
        assertThatThrownBy(() -> BlandAltman.of(new double[] {1, 2})).hasMessageContaining("3 pairs");
    }
}
