package org.voltdocket.access.signin;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Sha256;

/** Challenges in signed cookies that were answered already, so that each is accepted once. */
@Service
public class UsedChallenges {

    private final JdbcClient db;
    private final Clock clock;

    UsedChallenges(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    /** Whether this is the first use. */
    @Transactional
    public boolean use(String challenge, Duration lifetime) {
        return db.sql("insert into used_challenge (digest, expires_at) values (?, ?) on conflict do nothing")
                        .param(Sha256.of(challenge.getBytes(StandardCharsets.UTF_8))
                                .hex())
                        .param(clock.instant().plus(lifetime).atOffset(ZoneOffset.UTC))
                        .update()
                == 1;
    }

    @Transactional
    public void removeExpired() {
        db.sql("delete from used_challenge where expires_at < ?")
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .update();
    }
}
