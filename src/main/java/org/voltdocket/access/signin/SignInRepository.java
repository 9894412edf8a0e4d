package org.voltdocket.access.signin;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/** Table {@code sign_in}. */
@Repository
class SignInRepository {

    private final JdbcClient db;
    private final SignInSettings settings;
    private final Clock clock;

    SignInRepository(JdbcClient db, SignInSettings settings, Clock clock) {
        this.db = db;
        this.settings = settings;
        this.clock = clock;
    }

    /** @param account null where no account has the name */
    void add(UUID account, String address, SignInMethod method, boolean succeeded, List<String> unusual) {
        db.sql("insert into sign_in (happened_at, account_id, address, network, method, succeeded, unusual)"
                        + " values (?, ?, ?, ?, ?, ?, ?)")
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .param(account)
                .param(address)
                .param(ClientNetwork.of(address))
                .param(method.name())
                .param(succeeded)
                .param(unusual.toArray(new String[0]))
                .update();
    }

    /** Whether the account signed in before, but never from the network of this address. */
    boolean isNewNetwork(UUID account, String address) {
        return db.sql("select count(*) > 0 and not coalesce(bool_or(network = ?), false) from sign_in"
                        + " where account_id = ? and succeeded")
                .param(ClientNetwork.of(address))
                .param(account)
                .query(Boolean.class)
                .single();
    }

    /** @param unusualOnly leaves out what is usual */
    List<SignInEntry> latest(boolean unusualOnly, int most) {
        return db.sql("select happened_at, name, address, method, succeeded, unusual from sign_in"
                        + " left join account on account.id = sign_in.account_id"
                        + " where not ? or cardinality(unusual) > 0 order by ordinal desc limit ?")
                .param(unusualOnly)
                .param(most)
                .query((row, n) -> entry(row))
                .list();
    }

    @Transactional
    public void removeOld() {
        db.sql("delete from sign_in where happened_at < ?")
                .param(clock.instant().minus(settings.keep()).atOffset(ZoneOffset.UTC))
                .update();
    }

    private static SignInEntry entry(ResultSet row) throws SQLException {
        return new SignInEntry(
                row.getTimestamp("happened_at").toInstant(),
                row.getString("name"),
                row.getString("address"),
                SignInMethod.valueOf(row.getString("method")),
                row.getBoolean("succeeded"),
                List.of((String[]) row.getArray("unusual").getArray()));
    }
}
