package org.voltdocket.access.signin;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.util.Base64;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.support.ServerTest;

@ServerTest
class ServerSecretTest {

    @Autowired
    private ServerSecret secret;

    @Autowired
    private JdbcClient db;

    @Autowired
    private SignInSettings settings;

    @Test
    void aSealedTextOpensForItsPurposeAndTime() {
        String sealed = secret.seal("purpose", "text with ünicode", Duration.ofMinutes(5));
        assertThat(secret.open("purpose", sealed)).hasValue("text with ünicode");
        assertThat(secret.open("other", sealed)).isEmpty();
        assertThat(secret.open("purpose", secret.seal("purpose", "text", Duration.ofSeconds(-1))))
                .isEmpty();
        assertThat(secret.open("purpose", secret.seal("purpose", "stored"))).hasValue("stored");
        for (String wrong : new String[] {"", "a", "not base 64 !", sealed.substring(1), sealed + "AA"}) {
            assertThat(secret.open("purpose", wrong)).as(wrong).isEmpty();
        }
        byte[] bytes = Base64.getUrlDecoder().decode(sealed);
        bytes[bytes.length / 2] ^= 1;
        assertThat(secret.open("purpose", Base64.getUrlEncoder().encodeToString(bytes)))
                .isEmpty();
    }

    @Test
    void anotherServerOfTheDatabaseHasTheSameSecret() {
        ServerSecret other = new ServerSecret(db, settings, Clock.systemUTC());
        assertThat(other.open("purpose", secret.seal("purpose", "text"))).hasValue("text");
        assertThat(other.isSigned("purpose", "text", secret.sign("purpose", "text")))
                .isTrue();
        assertThat(other.isSigned("purpose", "other", secret.sign("purpose", "text")))
                .isFalse();
    }
}
