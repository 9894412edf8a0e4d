package org.voltdocket.desk;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The list of claims: all claims for the distributor, its own for a workshop. */
@Service
public class DeskService {

    /** Claims on a page. */
    public static final int LINES = 50;

    /** Largest number of workshops that a part of a name may match. */
    static final int WORKSHOPS = 50;

    private final DeskRepository store;
    private final ClaimCounts tally;
    private final WorkingDayService days;
    private final Clock clock;

    DeskService(DeskRepository store, ClaimCounts tally, WorkingDayService days, Clock clock) {
        this.store = store;
        this.tally = tally;
        this.days = days;
        this.clock = clock;
    }

    /**
     * A page of the list.
     *
     * @param next give it back for the next page; empty on the last
     */
    public record Found(List<DeskItem> lines, Optional<String> next) {}

    /**
     * One page in the filter's order.
     *
     * @throws RequestException if no page of this order gave the cursor, or the workshop's name means too many
     */
    @Transactional(readOnly = true)
    public Found page(Actor actor, DeskFilter filter, Optional<String> cursor) {
        DeskSearchSql sql = sql(actor, filter);
        cursor.ifPresent(text -> sql.after(DeskCursor.read(text, filter.order())));
        List<DeskItem> lines = store.lines(sql, LINES + 1);
        if (lines.size() <= LINES) {
            return new Found(List.copyOf(lines), Optional.empty());
        }
        List<DeskItem> shown = List.copyOf(lines.subList(0, LINES));
        return new Found(
                shown,
                Optional.of(
                        DeskCursor.after(shown.get(LINES - 1), filter.order()).text()));
    }

    /** Refuses what {@link #each} would refuse, before the answer begins. */
    @Transactional(readOnly = true)
    public void check(DeskFilter filter) {
        workshops(filter.workshop());
    }

    /**
     * Every claim that the filter shows, in its order, one at a time.
     *
     * @throws RequestException if the workshop's name means too many
     */
    @Transactional(readOnly = true)
    public void each(Actor actor, DeskFilter filter, Consumer<DeskItem> line) {
        store.each(sql(actor, filter), line);
    }

    /** How many claims have an objection that waits for its answer. */
    @Transactional(readOnly = true)
    public long objections(Actor actor) {
        return store.objections(actor.workshop());
    }

    /** How many claims there are by state, and within it by leaning; {@code none} where a case is not judged. */
    @Transactional(readOnly = true)
    public Map<String, Map<String, Long>> counts(Actor actor) {
        return tally.counts(actor);
    }

    DeskSearchSql sql(Actor actor, DeskFilter filter) {
        return new DeskSearchSql(
                actor, filter, workshops(filter.workshop()), days.setting().calendar(), LocalDate.now(clock));
    }

    private List<UUID> workshops(String part) {
        List<UUID> named = store.workshops(part, WORKSHOPS + 1);
        if (named.size() > WORKSHOPS) {
            throw RequestException.invalid(
                    "desk-refused",
                    "workshop",
                    "'workshop': more than " + WORKSHOPS + " workshops have '" + part
                            + "' in their names. Write more of the name.");
        }
        return named;
    }
}
