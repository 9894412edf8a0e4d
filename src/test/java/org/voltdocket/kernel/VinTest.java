package org.voltdocket.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VinTest {

    /**
     * Check digit by 49 CFR 565.15(c). The first four are published worked examples of that rule with their weighted
     * sums (351, 411, 314, 408); the next three are widely printed specimens whose sums (89, 311, 377) were worked out
     * by hand with the table of the regulation.
     */
    @ParameterizedTest
    @CsvSource({
        "1M8GDM9AXKP042788, X",
        "1G4AH59H45G118341, 4",
        "1J9RP1A36A1644345, 6",
        "5GZCZ43D13S812715, 1",
        "11111111111111111, 1",
        "1HGCM82633A004352, 3",
        "1FAFP40634F172825, 3"
    })
    void checkDigitOfPublishedExamples(String vin, char digit) {
        assertThat(Vin.checkDigit(vin)).isEqualTo(digit);
        Vin read = Vin.parse(vin);
        assertThat(read.checkDigitBinds()).isTrue();
        assertThat(read.checkDigitFits()).isTrue();
    }

    /** 49 CFR 565.15(c) again: the first example with another check digit must not pass. */
    @Test
    void aWrongBindingCheckDigitIsRefusedAndTheRightOneNamed() {
        assertThatThrownBy(() -> Vin.parse("1M8GDM9A1KP042788"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("position 9")
                .hasMessageContaining("give X");
    }

    /** The sum is 384, remainder 10: some pages print this one as valid, reading its first letter as a 5. */
    @Test
    void aMisprintedExampleDoesNotFit() {
        assertThat(Vin.checkDigit("SGZCZ43D13S812715")).isEqualTo('X');
        assertThat(Vin.parse("SGZCZ43D13S812715").checkDigitFits()).isFalse();
    }

    /** European makers fill position 9 with Z (from memory; common practice): never refused. */
    @Test
    void outsideNorthAmericaTheCheckDigitIsInformation() {
        Vin vin = Vin.parse("WP0ZZZ99ZTS392124");
        assertThat(vin.checkDigitBinds()).isFalse();
        assertThat(vin.checkDigitFits()).isFalse();
        assertThat(vin.modelYear()).isEmpty();
    }

    /** World manufacturer identifiers of North America: 1 to 5, and 7F to 70 (ISO 3780 order: letters, digits, 0 last). */
    @ParameterizedTest
    @CsvSource({
        "1M8, true",
        "5GZ, true",
        "6AA, false",
        "7AA, false",
        "7EA, false",
        "7FA, true",
        "7ZA, true",
        "79A, true",
        "70A, true",
        "8AA, false",
        "JAA, false"
    })
    void whereTheCheckDigitBinds(String maker, boolean binds) {
        String rest = "A00000000000000".substring(0, 5);
        String vin = maker + rest + "0" + "A0000000";
        String fitting = vin.substring(0, 8) + Vin.checkDigit(vin) + vin.substring(9);
        assertThat(new Vin(fitting).checkDigitBinds()).isEqualTo(binds);
    }

    /**
     * Model year by position 10 (from memory: A 1980/2010 to Y 2000/2030, then 1 to 9 = 2001/2031 to 2009/2039);
     * position 7 alphabetic means the later cycle (49 CFR 565.15(b)).
     */
    @ParameterizedTest
    @CsvSource({
        "1M8GDM9_KP042788, 1989", // position 7 is a digit
        "1HGCM826_3A004352, 2003",
        "1G4AH59H_5G118341, 2005",
        "1J9RP1A3_A1644345, 2010" // position 7 is a letter
    })
    void modelYear(String pattern, int year) {
        String vin = pattern.length() == 17 ? pattern : pattern.replace("_", "A_");
        String blank = vin.replace('_', '0');
        String fitting = blank.substring(0, 8) + Vin.checkDigit(blank) + blank.substring(9);
        assertThat(Vin.parse(fitting).modelYear()).hasValue(year);
    }

    @Test
    void blanksAndHyphensGoAndLettersRise() {
        assertThat(Vin.parse(" 1m8gdm9a-xkp 042788 ").value()).isEqualTo("1M8GDM9AXKP042788");
    }

    /** Code 39 labels may carry a leading I (from memory; common practice of scanners). */
    @Test
    void theLeadingLetterOfALabelIsStripped() {
        assertThat(Vin.parse("I1M8GDM9AXKP042788").value()).isEqualTo("1M8GDM9AXKP042788");
    }

    @ParameterizedTest
    @ValueSource(strings = {"IM8GDM9AXKP042788", "1M8GDM9AXKPO42788", "1M8GDM9AXKPQ42788"})
    void misreadLettersAreSuggestedNeverTaken(String misread) {
        assertThat(Vin.suggestion(misread)).contains(new Vin("1M8GDM9AXKP042788"));
        assertThatThrownBy(() -> Vin.parse(misread)).hasMessageContaining("Did you read 1M8GDM9AXKP042788?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1M8GDM9AXKP04278", "1M8GDM9AXKP0427888", "1M8GDM9AXKP04278_", "ÄM8GDM9AXKP042788"})
    void whatIsNoVinIsRefused(String text) {
        assertThatThrownBy(() -> Vin.parse(text)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Vin.suggestion(text)).isEmpty();
    }

    @Test
    void everySingleWrongCharacterOfOneExampleThatChangesTheSumIsCaught() {
        String vin = "1M8GDM9AXKP042788";
        int caught = 0;
        int passed = 0;
        for (int i = 0; i < 17; i++) {
            for (char c : "0123456789ABCDEFGHJKLMNPRSTUVWXYZ".toCharArray()) {
                if (i == 0 || c == vin.charAt(i)) {
                    continue; // another first character may be another country
                }
                String wrong = vin.substring(0, i) + c + vin.substring(i + 1);
                try {
                    assertThat(Vin.checkDigit(new Vin(wrong).value())).isEqualTo(wrong.charAt(8));
                    passed++;
                } catch (IllegalArgumentException e) {
                    caught++;
                }
            }
        }
        // letters and digits of the same worth (A, J, 1) cannot be told apart by the sum; all others are
        assertThat(caught).isGreaterThan(passed * 6);
    }
}
