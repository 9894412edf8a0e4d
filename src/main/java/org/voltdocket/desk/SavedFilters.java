package org.voltdocket.desk;

import java.time.Clock;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Filters that an account saved; other accounts do not see them. */
@Component
public class SavedFilters {

    private static final int MOST = 30;
    private static final int MOST_NAME = 60;

    private final SavedFilterRepository filters;
    private final Clock clock;

    SavedFilters(SavedFilterRepository filters, Clock clock) {
        this.filters = filters;
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
        return filters.ofAccount(actor.user()).stream()
                .map(one -> new Saved(one.name(), one.query()))
                .toList();
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
        List<SavedFilterEntity> own = filters.ofAccount(actor.user());
        SavedFilterEntity saved = own.stream()
                .filter(one -> one.name().equals(known))
                .findFirst()
                .orElseGet(() -> new SavedFilterEntity(actor.user(), known));
        if (own.size() >= MOST && !own.contains(saved)) {
            throw RequestException.invalid(
                    "desk-refused", "name", "An account saves at most " + MOST + " filters; delete one first.");
        }
        saved.update(filter.query(), clock.instant());
        filters.save(saved);
    }

    /** Deletes a filter of the account, if there is one of this name. */
    @Transactional
    public void delete(Actor actor, String name) {
        filters.deleteByAccountAndName(actor.user(), name);
    }
}
