package org.voltdocket.access.password;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.voltdocket.kernel.RequestException;

/** Lengths and the ban on composition rules: NIST SP 800-63B-4, section 3.1.1.2. */
class PasswordRulesTest {

    private final PasswordRules rules = new PasswordRules("");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "test-only words",
                "another set of words",
                "correct horse battery staple",
                "cinq mots à moi seul",
                "沿岸の灯台は今夜も光っている様だ",
                "onlylowercaselettersandnodigits",
                "482 913 770 256 041"
            })
    void fifteenCharactersOfAnyKindAreEnough(String password) {
        assertThat(rules.checked(password, "clerk")).isEqualTo(password);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "fourteen chars",
                "qwerty123456789",
                "Password1234567!",
                "1234567password",
                "passwordpassword",
                "123456789012345",
                "abcdefghijklmno",
                "aaaaaaaaaaaaaaaaaaaa",
                "voltdocket-2026",
                "clerkclerkclerk"
            })
    void shortCommonAndDerivedPasswordsAreRefused(String password) {
        assertThatThrownBy(() -> rules.checked(password, "clerk"))
                .isInstanceOfSatisfying(
                        RequestException.class,
                        refused -> assertThat(refused.field()).isEqualTo("password"));
    }

    @Test
    void aLongPasswordIsReadToItsEnd() {
        String password = "0123456789 abcdef ".repeat(11);
        assertThat(rules.checked(password, "clerk")).hasSizeGreaterThan(64);
        assertThatThrownBy(() -> rules.checked("x y z ".repeat(40), "clerk")).isInstanceOf(RequestException.class);
        PasswordEncoder encoder = new PasswordEncoderConfiguration().passwordEncoder();
        String hash = encoder.encode(password);
        assertThat(hash).startsWith("{argon2id}$argon2id$v=19$m=19456,t=2,p=1$");
        assertThat(encoder.matches(password, hash)).isTrue();
        assertThat(encoder.matches(password.substring(0, password.length() - 1), hash))
                .isFalse();
        // "é" as one character and as two
        assertThat(encoder.matches("caf\u0065\u0301 at the corner", encoder.encode("caf\u00e9 at the corner")))
                .isTrue();
    }

    @Test
    void thePasswordOfTheDemoIsAllowedInTheDemoOnly() {
        assertThat(new PasswordRules("voltdocket-demo").checked("voltdocket-demo", "clerk"))
                .isEqualTo("voltdocket-demo");
        assertThatThrownBy(() -> rules.checked("voltdocket-demo", "clerk")).isInstanceOf(RequestException.class);
    }
}
