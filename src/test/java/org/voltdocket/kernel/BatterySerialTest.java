package org.voltdocket.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BatterySerialTest {

    @Test
    void blanksGoAndLettersRise() {
        assertThat(BatterySerial.parse("  ab 12-3.4/x\t").value()).isEqualTo("AB12-3.4/X");
    }

    @Test
    void fourToForty() {
        assertThat(BatterySerial.parse("A123").value()).isEqualTo("A123");
        assertThat(BatterySerial.parse("A".repeat(40)).value()).hasSize(40);
        assertThatThrownBy(() -> BatterySerial.parse("A12")).hasMessageContaining("4 to 40");
        assertThatThrownBy(() -> BatterySerial.parse("A".repeat(41))).hasMessageContaining("4 to 40");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "AB_12", "AB'12", "ÄB12", "AB%12", "AB\u000012"})
    void whatIsOnNoLabelIsRefused(String text) {
        assertThatThrownBy(() -> BatterySerial.parse(text)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Upper-casing must not depend on the language of the machine: a Turkish one would make İ of i. */
    @Test
    void lettersRiseTheSameEverywhere() {
        java.util.Locale before = java.util.Locale.getDefault();
        try {
            java.util.Locale.setDefault(java.util.Locale.forLanguageTag("tr"));
            assertThat(BatterySerial.parse("ii-12").value()).isEqualTo("II-12");
        } finally {
            java.util.Locale.setDefault(before);
        }
    }
}
