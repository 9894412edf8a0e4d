package org.voltdocket.desk;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Filters that an account saved; other accounts do not see them. */
@Component
public class SavedFilters {

    private static final int MOST = 30;
    private static final int MOST_NAME = 60;

    private final JdbcClient db;
    private final Clock clock;

    SavedFilters(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    /**
     * A filter under its name.
     *
     * @param query of the desk's address, without the question mark
     */
    public record Saved(String name, String query) {}

    /** Those of the account, by name. */
    @Transactional(readOnly = true)
    public List<Saved> of(Actor actor) {
        return db.sql("select name, query from claim_saved_filter where account = ? order by lower(name)")
                .param(actor.user())
                .query((row, number) -> new Saved(row.getString("name"), row.getString("query")))
                .list();
    }

    /**
     * Saves a filter; one of the same name is replaced.
     *
     * @throws RequestException if the name is blank or too long, or there are 30 already
     */
    @Transactional
    public void save(Actor actor, String name, DeskFilter filter) {
        String known = name == null ? "" : name.strip();
        if (known.isEmpty() || known.length() > MOST_NAME || known.indexOf(0) >= 0) {
            throw RequestException.invalid(
                    "desk-refused", "name", "A saved filter has a name of 1 to " + MOST_NAME + " characters.");
        }
        List<Saved> mine = of(actor);
        if (mine.size() >= MOST && mine.stream().noneMatch(saved -> saved.name().equals(known))) {
            throw RequestException.invalid(
                    "desk-refused", "name", "An account saves at most " + MOST + " filters; delete one first.");
        }
        db.sql(
                        "insert into claim_saved_filter (account, name, query, saved_at) values (?, ?, ?, ?)"
                                + " on conflict (account, name) do update set query = excluded.query, saved_at = excluded.saved_at")
                .param(actor.user())
                .param(known)
                .param(filter.query())
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** Deletes a filter of the account, if there is one of this name. */
    @Transactional
    public void delete(Actor actor, String name) {
        db.sql("delete from claim_saved_filter where account = ? and name = ?")
                .param(actor.user())
                .param(name)
                .update();
    }
}
