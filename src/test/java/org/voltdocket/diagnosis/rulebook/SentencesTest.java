package org.voltdocket.diagnosis.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SentencesTest {

    /** As many decimals as the unit deserves; small currents, such as a drain at rest, to the milliampere; a real minus. */
    @ParameterizedTest
    @CsvSource({
        "12.345, V, 12.35",
        "-1.26, A, \u22121.3",
        "0.0504, A, 0.050",
        "-0.0504, A, \u22120.050",
        "0.2, A, 0.2",
        "0.1, Ah, 0.1",
        "6.04, mΩ, 6.0",
        "0.987, ratio, 0.99",
        "79.6, %, 80",
        "3, count, 3"
    })
    void aNumberReadsAsItsUnitDeserves(double value, String unit, String said) {
        assertThat(Sentences.number(value, unit)).isEqualTo(said);
    }

    @Test
    void aSentenceIsSaidOrItsKeyIsRefused() {
        assertThat(Sentences.plain("finding.uncertain")).isNotBlank();
        assertThatThrownBy(() -> Sentences.plain("finding.nothing.at-all"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("finding.nothing.at-all");
    }
}
