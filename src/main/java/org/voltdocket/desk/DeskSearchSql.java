package org.voltdocket.desk;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.voltdocket.casefile.search.CaseSearchCondition;
import org.voltdocket.casefile.search.CaseSearchText;
import org.voltdocket.claim.deadline.BusinessCalendar;
import org.voltdocket.kernel.Actor;

/** A filter as SQL over {@code claim_list}: conditions that its indexes serve, and a place to go on from instead of an offset. */
final class DeskSearchSql {

    private static final int SOON_DAYS = 5;
    private static final String OPEN = "d.open";

    private final List<String> where = new ArrayList<>();
    private final List<String> walked = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();
    private final DeskOrder order;
    private List<String> indexed = List.of();
    private String anyMatch = "";

    /** @param workshops those that the filter's part of a name means */
    DeskSearchSql(Actor actor, DeskFilter filter, List<UUID> workshops, BusinessCalendar calendar, LocalDate today) {
        this.order = filter.order();
        if (actor.isWorkshop()) {
            and("d.workshop_id = :own", "own", actor.workshop().orElseThrow());
        }
        if (filter.state().equals(DeskFilter.OPEN)) {
            where.add(OPEN);
        } else if (!filter.state().equals(DeskFilter.ALL)) {
            and("d.state = :state", "state", filter.state());
        }
        if (order == DeskOrder.DUE) {
            // only open ones are due; said, so that their own index serves, and once, for the planner counts it twice
            where.add(where.contains(OPEN) ? "d.due_on is not null" : OPEN + " and d.due_on is not null");
        }
        walked.addAll(where);
        if (filter.leaning().equals("none")) {
            where.add("d.leaning is null");
        } else if (!filter.leaning().isEmpty()) {
            and("d.leaning = :leaning", "leaning", filter.leaning());
        }
        if (!filter.cause().isEmpty()) {
            and("d.first_cause = :cause", "cause", filter.cause());
        }
        if (filter.least() != null) {
            and("d.probability >= :least", "least", filter.least() / 100.0);
        }
        if (!filter.workshop().isEmpty()) {
            workshops(workshops);
        }
        if (filter.from() != null) {
            and("d.amount >= :from", "from", filter.from());
        }
        if (filter.to() != null) {
            and("d.amount <= :to", "to", filter.to());
        }
        days(filter, calendar, today);
        taker(actor, filter.taker());
        if (filter.look().equals("objection")) {
            where.add("d.objected_at is not null");
        } else if (!filter.look().isEmpty() && !actor.isWorkshop()) {
            where.add("exists (select from open_case_notice n where n.case_id = d.case_id)");
        }
        if (!filter.q().isEmpty()) {
            CaseSearchCondition search = new CaseSearchCondition(CaseSearchText.of(filter.q()), "d");
            indexed = search.indexed();
            anyMatch = search.plain();
            params.putAll(search.params());
        }
    }

    /** As values, not as a query within: the plan depends on how many claims those workshops have. */
    private void workshops(List<UUID> workshops) {
        if (workshops.size() == 1) {
            // one has its claims in each order in an index
            and("d.workshop_id = :workshops", "workshops", workshops.get(0));
        } else {
            and("d.workshop_id = any(:workshops)", "workshops", workshops.toArray(UUID[]::new));
        }
    }

    private void days(DeskFilter filter, BusinessCalendar calendar, LocalDate today) {
        if (filter.age() != null) {
            // with today, so many working days have begun since: what came before the first of them is as old
            LocalDate first = calendar.before(today.plusDays(1), filter.age());
            and("d.waiting_since < :before", "before", first.atStartOfDay().atOffset(ZoneOffset.UTC));
        }
        switch (filter.due()) {
            case "over" -> and("d.due_on < :due", "due", today);
            case "today" -> and("d.due_on = :due", "due", today);
            case "week" -> and("d.due_on <= :due", "due", calendar.after(today, SOON_DAYS));
            default -> {}
        }
    }

    private void taker(Actor actor, String taker) {
        if (taker.equals("me")) {
            and("d.taken_by = :taker", "taker", actor.user());
        } else if (taker.equals("second")) {
            and("d.proposed_by <> :taker", "taker", actor.user());
        } else if (taker.equals("nobody")) {
            where.add("d.taken_by is null");
        }
    }

    private void and(String condition, String name, Object value) {
        where.add(condition);
        params.put(name, value);
    }

    boolean searches() {
        return !anyMatch.isEmpty();
    }

    /** Claims that the text means, by each key's own index, so many at most of each. */
    private String hits(int most) {
        return indexed.stream()
                .map(match -> "(select d.claim_id from claim_list d" + condition(where, match) + " limit " + most + ")")
                .collect(Collectors.joining(" union "));
    }

    /** Whether the text means more than so many. */
    String manyHits(int most) {
        return "select count(*) > " + most + " from (" + hits(most + 1) + ") h";
    }

    /** Goes on after the line where a page ended. */
    void after(DeskCursor cursor) {
        String way = order.rising ? ">" : "<";
        String beyond =
                "(d." + order.column + ", d.ordinal) " + way + " (cast(:value as " + order.type + "), :ordinal)";
        where.add(beyond);
        walked.add(beyond);
        params.put("value", cursor.value());
        params.put("ordinal", cursor.ordinal());
    }

    Map<String, Object> params() {
        return params;
    }

    /** What the filter shows, in its order. */
    String select(String limit) {
        return named("select * from claim_list d" + condition(where, anyMatch) + by() + limit);
    }

    /** The same of few hits: they are looked up first and then sorted. */
    String selectHits(int most, String limit) {
        // materialized: a join could be turned into a walk
        return "with h as materialized (" + hits(most) + ") "
                + named("select d.* from h join claim_list d using (claim_id)" + by() + limit);
    }

    /** The same among the next so many in the order, whatever else of the filter they meet. */
    String glance(int rows, String limit) {
        String next = "(select * from claim_list d" + condition(walked, "") + by() + " limit " + rows + ")";
        return named("select * from " + next + " d" + condition(where, anyMatch) + by() + limit);
    }

    /** The names of workshops are joined to the lines shown only. */
    private String named(String lines) {
        return "select d.*, w.name as workshop from (" + lines + ") d join workshop_summary w on w.id = d.workshop_id"
                + by();
    }

    private String by() {
        String way = order.rising ? " asc" : " desc";
        return " order by d." + order.column + way + ", d.ordinal" + way;
    }

    private static String condition(List<String> all, String more) {
        String text = String.join(" and ", all) + (all.isEmpty() || more.isEmpty() ? "" : " and ") + more;
        return text.isEmpty() ? "" : " where " + text;
    }
}
