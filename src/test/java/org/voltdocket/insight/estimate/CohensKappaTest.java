package org.voltdocket.insight.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CohensKappaTest {

    /**
     * J. L. Fleiss, B. Levin, M. C. Paik, Statistical Methods for Rates and Proportions, table 18.1: 100 subjects by two raters;
     * kappa .68, its standard error .087. Table and answers from memory.
     */
    @Test
    void threeDiagnoses() {
        CohensKappa kappa =
                CohensKappa.of(new long[][] {{75, 1, 4}, {5, 4, 1}, {0, 0, 10}}).orElseThrow();
        assertThat(kappa.count()).isEqualTo(100);
        assertThat(kappa.observed()).isCloseTo(0.89, within(1e-12));
        assertThat(kappa.expected()).isCloseTo(0.66, within(1e-12));
        assertThat(kappa.kappa().value()).isCloseTo(0.676, within(5e-4));
        assertThat((kappa.kappa().high() - kappa.kappa().low()) / (2 * 1.96)).isCloseTo(0.087, within(1e-3));
    }

    /**
     * A. J. Viera, J. M. Garrett, 2005, Understanding interobserver agreement: the kappa statistic, Family Medicine 37, 360-363:
     * 15, 5, 10, 70 gives kappa .57. From memory.
     */
    @Test
    void twoResidents() {
        CohensKappa kappa = CohensKappa.of(new long[][] {{15, 5}, {10, 70}}).orElseThrow();
        assertThat(kappa.kappa().value()).isCloseTo(0.57, within(5e-3));
    }

    @Test
    void fullAgreementIsOneAndOneCategorySaysNothing() {
        assertThat(CohensKappa.of(new long[][] {{4, 0}, {0, 6}})
                        .orElseThrow()
                        .kappa()
                        .value())
                .isEqualTo(1);
        assertThat(CohensKappa.of(new long[][] {{9, 0}, {0, 0}})).isEmpty();
        assertThat(CohensKappa.of(new long[][] {{0, 0}, {0, 0}})).isEmpty();
        assertThatThrownBy(() -> CohensKappa.of(new long[][] {{1, 2}})).isInstanceOf(IllegalArgumentException.class);
    }
}
