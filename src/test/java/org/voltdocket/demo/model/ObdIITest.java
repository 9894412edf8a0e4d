package org.voltdocket.demo.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Formulas of SAE J1979 / ISO 15031-5, mode 01; that of parameter 0x5B is from memory. */
class ObdIITest {

    @ParameterizedTest
    @CsvSource({
        "ENGINE_RPM, 1A F8, 1726",
        "MODULE_VOLTAGE, 38 40, 14.400",
        "MODULE_VOLTAGE, 30 D4, 12.500",
        "AMBIENT, 41, 25",
        "COOLANT, 00, -40",
        "COOLANT, FF, 215",
        "SPEED, FF, 255",
        "RUN_TIME, 01 00, 256",
        "BATTERY_PACK_LIFE, FF, 100"
    })
    void aWorkedAnswerReadsAndWritesAsPublished(ObdII parameter, String bytes, double value) {
        int[] data = java.util.Arrays.stream(bytes.split(" "))
                .mapToInt(b -> Integer.parseInt(b, 16))
                .toArray();
        assertThat(parameter.decode(data)).isCloseTo(value, within(1e-9));
        assertThat(parameter.encode(value)).isEqualTo(data);
    }

    @ParameterizedTest
    @EnumSource(ObdII.class)
    void everyAnswerSurvivesBeingReadAndSentAgain(ObdII parameter) {
        int bytes = parameter.encode(0).length;
        for (int raw = 0; raw < 1 << 8 * bytes; raw += bytes == 1 ? 1 : 37) {
            int[] data = bytes == 1 ? new int[] {raw} : new int[] {raw >> 8, raw & 0xFF};
            assertThat(parameter.encode(parameter.decode(data))).isEqualTo(data);
        }
    }

    @Test
    void whatTheBytesCannotCarryIsSentAsTheNearest() {
        assertThat(ObdII.SPEED.asRead(300)).isEqualTo(255);
        assertThat(ObdII.COOLANT.asRead(-60)).isEqualTo(-40);
        assertThat(ObdII.ENGINE_RPM.asRead(801.1)).isEqualTo(801);
    }

    @Test
    void anAnswerOfAnotherLengthIsRefused() {
        assertThatThrownBy(() -> ObdII.MODULE_VOLTAGE.decode(0x38)).hasMessageContaining("2 data bytes");
    }
}
