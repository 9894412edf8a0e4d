package org.voltdocket.diagnosis.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checked against the Java library's parser, which rounds correctly by its specification. */
class DecimalTest {

    private static double parse(String text) {
        byte[] b = text.getBytes(StandardCharsets.US_ASCII);
        return new Decimal(false).parse(b, 0, b.length);
    }

    private static float parseFloat(String text) {
        byte[] b = text.getBytes(StandardCharsets.US_ASCII);
        Decimal decimal = new Decimal(false);
        return decimal.toFloat(decimal.parse(b, 0, b.length), b, 0, b.length);
    }

    @Test
    void roundsLikeTheLibrary() {
        Random random = new Random(7);
        for (int i = 0; i < 300_000; i++) {
            int digits = 1 + random.nextInt(22);
            StringBuilder text = new StringBuilder(random.nextBoolean() ? "-" : "");
            int point = random.nextInt(digits + 1);
            for (int k = 0; k < digits; k++) {
                text.append(k == point ? "." : "").append((char) ('0' + random.nextInt(10)));
            }
            if (random.nextInt(3) == 0) {
                text.append(random.nextBoolean() ? "e" : "E").append(random.nextInt(81) - 40);
            }
            String number = text.toString();
            assertThat(Double.doubleToRawLongBits(parse(number)))
                    .as(number)
                    .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(number)));
            assertThat(Float.floatToRawIntBits(parseFloat(number)))
                    .as(number)
                    .isEqualTo(Float.floatToRawIntBits(Float.parseFloat(number)));
        }
    }

    @Test
    void roundsOnceAtTheMiddleBetweenTwoFloats() {
        Random random = new Random(8);
        for (int i = 0; i < 20_000; i++) {
            float below = 1 + random.nextFloat() * 30;
            BigDecimal middle = new BigDecimal(below)
                    .add(new BigDecimal(Math.nextUp(below)))
                    .divide(new BigDecimal(2));
            for (String tail : new String[] {"", "0000000000000000000001"}) {
                String number = middle.toPlainString() + tail;
                assertThat(parseFloat(number)).as(number).isEqualTo(Float.parseFloat(number));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"12.5,12.5", "+3,3", "-0,-0.0", ".5,0.5", "7.,7", "1E3,1000", "1e-400,0", "0000000000000000000000012,12"
    })
    void takesTheUsualForms(String text, double value) {
        assertThat(parse(text)).isEqualTo(value);
    }

    @ParameterizedTest
    @CsvSource({"''", "-", ".", "e5", "1e", "1e+", "1 2", "1.2.3", "0x10", "1f", "NaN", "∞", "1_000", "'12,5'"})
    void takesNothingElse(String text) {
        byte[] b = text.getBytes(StandardCharsets.UTF_8);
        assertThat(new Decimal(false).parse(b, 0, b.length)).isNaN();
    }
}
