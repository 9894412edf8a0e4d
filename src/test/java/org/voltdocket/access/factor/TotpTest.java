package org.voltdocket.access.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TotpTest {

    private static final String DIGITS = "1234567890";

    /** RFC 6238, appendix B: seeds of 20, 32 and 64 bytes, codes of eight digits. */
    @ParameterizedTest
    @CsvSource({
        "59, 94287082, 46119246, 90693936",
        "1111111109, 07081804, 68084774, 25091201",
        "1111111111, 14050471, 67062674, 99943326",
        "1234567890, 89005924, 91819424, 93441116",
        "2000000000, 69279037, 90698825, 38618901",
        "20000000000, 65353130, 77737706, 47863826"
    })
    void codesAreThoseOfTheStandard(long time, String sha1, String sha256, String sha512) {
        long step = Totp.step(Instant.ofEpochSecond(time));
        assertThat(Totp.code(seed(20), step, 8, "HmacSHA1")).isEqualTo(sha1);
        assertThat(Totp.code(seed(32), step, 8, "HmacSHA256")).isEqualTo(sha256);
        assertThat(Totp.code(seed(64), step, 8, "HmacSHA512")).isEqualTo(sha512);
        assertThat(Totp.code(seed(20), step)).isEqualTo(sha1.substring(2));
    }

    /** RFC 4226, appendix D: six digits by the counter. */
    @ParameterizedTest
    @CsvSource({"0, 755224", "1, 287082", "2, 359152", "5, 254676", "9, 520489"})
    void sixDigitsByCounter(long counter, String code) {
        assertThat(Totp.code(seed(20), counter)).isEqualTo(code);
    }

    /** RFC 4648, section 10, without padding. */
    @ParameterizedTest
    @CsvSource({"f, MY", "fo, MZXQ", "foo, MZXW6", "foob, MZXW6YQ", "fooba, MZXW6YTB", "foobar, MZXW6YTBOI"})
    void base32(String text, String encoded) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        assertThat(Base32.encode(bytes)).isEqualTo(encoded);
        assertThat(Base32.decode(encoded)).isEqualTo(bytes);
    }

    @Test
    void theImageIsSvg() {
        assertThat(QrImage.dataUri("otpauth://totp/Voltdocket:clerk?secret=MZXW6YTBOI"))
                .startsWith("data:image/svg+xml;base64,");
    }

    private static byte[] seed(int length) {
        return DIGITS.repeat(7).substring(0, length).getBytes(StandardCharsets.US_ASCII);
    }
}
