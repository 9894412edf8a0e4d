package org.voltdocket.access.factor;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.kernel.Sha256;

/** Recovery codes: ten per account, 60 random bits each, stored as a keyed digest, each accepted once. */
@Repository
class RecoveryCodes {

    static final int COUNT = 10;

    /** Base 32 characters in groups of four. */
    private static final int GROUPS = 3;

    private static final SecureRandom RANDOM = new SecureRandom();

    private final JdbcClient db;
    private final ServerSecret secret;
    private final Clock clock;

    RecoveryCodes(JdbcClient db, ServerSecret secret, Clock clock) {
        this.db = db;
        this.secret = secret;
        this.clock = clock;
    }

    /** Replaces the codes of an account and returns the new ones, which can be read this once. */
    List<String> replace(UUID account) {
        remove(account);
        List<String> codes = new ArrayList<>();
        for (int i = 0; i < COUNT; i++) {
            byte[] bytes = new byte[8];
            RANDOM.nextBytes(bytes);
            String text = Base32.encode(bytes).substring(0, 4 * GROUPS);
            codes.add(text.replaceAll("(.{4})(?!$)", "$1-"));
            db.sql("insert into recovery_code (account_id, digest) values (?, ?)")
                    .param(account)
                    .param(digest(account, text))
                    .update();
        }
        return codes;
    }

    /** Uses up a code; false where the account has none like it or it was used before. */
    boolean use(UUID account, String code) {
        String text = code.toUpperCase(Locale.ROOT).replaceAll("[^A-Z2-7]", "");
        return db.sql("update recovery_code set used_at = ? where account_id = ? and digest = ? and used_at is null")
                        .param(clock.instant().atOffset(ZoneOffset.UTC))
                        .param(account)
                        .param(digest(account, text))
                        .update()
                == 1;
    }

    int left(UUID account) {
        return db.sql("select count(*) from recovery_code where account_id = ? and used_at is null")
                .param(account)
                .query(Integer.class)
                .single();
    }

    void remove(UUID account) {
        db.sql("delete from recovery_code where account_id = ?").param(account).update();
    }

    private String digest(UUID account, String text) {
        String keyed = secret.sign("recovery-code", account + "\n" + text);
        return Sha256.of(keyed.getBytes(StandardCharsets.UTF_8)).hex();
    }
}
