package org.voltdocket.diagnosis.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssessmentJsonTest {

    @ParameterizedTest
    @CsvSource({
        "4.1, 4.1",
        "-0.0, 0",
        "1e22, 10000000000000000000000",
        "0.1, 0.1",
        "0.30000000000000004, 0.3",
        "1e-12, 0.000000000001",
        "123456789.987654321, 123456790",
        "2.0e-3, 0.002"
    })
    void numbersArePlainAndHaveTenDigits(double value, String text) {
        assertThat(AssessmentJson.number(value).toPlainString()).isEqualTo(text);
    }

    @Test
    void whatIsNoNumberIsNoPartOfAnAssessment() {
        assertThatThrownBy(() -> AssessmentJson.number(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AssessmentJson.number(Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(AssessmentJson.number((Double) null)).isNull();
    }
}
