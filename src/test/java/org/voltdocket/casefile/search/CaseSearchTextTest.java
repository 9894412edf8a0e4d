package org.voltdocket.casefile.search;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.kernel.CaseNumber;

class CaseSearchTextTest {

    @ParameterizedTest
    @CsvSource({
        "bx-70/12, BX-70/12, ",
        "' bx 70 12 ', BX7012, BX7012",
        "a, A, ",
        "042788, 042788, 042788",
        "XKP0-4278, XKP0-4278, XKP04278",
        "1m8gdm9axkp042788, 1M8GDM9AXKP042788, 1M8GDM9AXKP042788",
        "1M8-GDM9AX-KP042788, 1M8-GDM9AX-KP042788, 1M8GDM9AXKP042788",
        "I1M8GDM9AXKP042788, I1M8GDM9AXKP042788, 1M8GDM9AXKP042788",
        "X1M8GDM9AXKP042788, X1M8GDM9AXKP042788, ",
        "Ä, , ",
    })
    void aTextMayBeAPartOfASerialOrAVin(String typed, String serialPart, String vin) {
        CaseSearchText text = CaseSearchText.of(typed);
        assertThat(text.serialPart().orElse(null)).isEqualTo(serialPart);
        assertThat(text.vin().orElse(null)).isEqualTo(vin);
        assertThat(text.isMeaningless()).isEqualTo(serialPart == null && vin == null);
    }

    @Test
    void aTextMayBeACaseNumber() {
        CaseNumber number = CaseNumber.of(1234);
        assertThat(CaseSearchText.of(number.value()).number()).contains(number);
        assertThat(CaseSearchText.of(" " + number.value().toLowerCase() + " ").number())
                .contains(number);
        assertThat(CaseSearchText.of("V-000").number()).isEmpty();
    }

    @Test
    void aSerialLongerThanFortyCharactersMeansNothing() {
        assertThat(CaseSearchText.of("A".repeat(40)).serialPart()).isPresent();
        assertThat(CaseSearchText.of("A".repeat(41)).isMeaningless()).isTrue();
    }
}
