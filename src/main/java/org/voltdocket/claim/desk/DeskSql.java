package org.voltdocket.claim.desk;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;

/** A filter as SQL over {@code claim_desk}: conditions that its indexes serve, and a place to go on from instead of an offset. */
final class DeskSql {

    private static final int SOON_DAYS = 5;

    private final List<String> where = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();
    private final DeskOrder order;
    private final String base;
    private List<String> matches = List.of();

    /** @param workshops those that the filter's part of a name means */
    DeskSql(Actor actor, DeskFilter filter, List<UUID> workshops, BusinessCalendar calendar, LocalDate today) {
        this.order = filter.order();
        if (actor.role() == Role.WORKSHOP) {
            and("d.workshop_id = :own", "own", actor.workshop().orElseThrow());
        }
        if (filter.state().equals(DeskFilter.OPEN)) {
            where.add("d.open");
        } else if (!filter.state().equals(DeskFilter.ALL)) {
            and("d.state = :state", "state", filter.state());
        }
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
            // as values, not as a query within: the plan depends on how many claims those workshops have
            and("d.workshop_id = any(:workshops)", "workshops", workshops.toArray(UUID[]::new));
        }
        if (filter.from() != null) {
            and("d.amount >= :from", "from", filter.from());
        }
        if (filter.to() != null) {
            and("d.amount <= :to", "to", filter.to());
        }
        days(filter, calendar, today);
        taker(actor, filter.taker());
        if (!filter.look().isEmpty() && actor.role() != Role.WORKSHOP) {
            where.add("exists (select from claim_notice n where n.case_id = d.case_id and n.looked_at is null"
                    + " and n.gone_at is null)");
        }
        base = where.size() < 1 ? "" : " and " + String.join(" and ", where);
        if (!filter.q().isEmpty() && !filter.tooShort()) {
            matches = matches(filter.q());
            where.add("(" + String.join(" or ", matches) + ")");
        }
        if (order == DeskOrder.DUE) {
            where.add("d.due_on is not null");
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

    /** Any key that the text may be, as a person types it; each alternative has its index. */
    private List<String> matches(String q) {
        String serial = q.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        String bare = serial.replace("-", "");
        List<String> any = new ArrayList<>();
        if (serial.matches("[A-Z0-9./-]{3,40}")) {
            any.add("d.battery_serial like :begin");
            any.add("reverse(d.battery_serial) like :end");
            params.put("begin", serial + "%");
            params.put("end", new StringBuilder(serial).reverse() + "%");
        }
        number(q).ifPresent(number -> {
            any.add("d.number = :number");
            params.put("number", number.value());
        });
        String column = switch (bare.length()) {
            case 6 -> "right(d.vin, 6)";
            case 8 -> "right(d.vin, 8)";
            case 17 -> "d.vin";
            default -> null;
        };
        if (column != null) {
            any.add(column + " = :vin");
            params.put("vin", bare);
        }
        return any.isEmpty() ? List.of("false") : any;
    }

    private static Optional<CaseNumber> number(String q) {
        try {
            return Optional.of(CaseNumber.parse(q));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    boolean searches() {
        return !matches.isEmpty();
    }

    /** Finds the claims that the text means by each key's own index, so many at most of each. */
    String hits(int most) {
        return matches.stream()
                .map(match -> "(select d.claim_id from claim_desk d where " + match + base + " limit " + most + ")")
                .collect(Collectors.joining(" union "));
    }

    /** Lists only these: few were found, and an index leads to each. */
    void only(List<UUID> claims) {
        and("d.claim_id = any(:hits)", "hits", claims.toArray(UUID[]::new));
    }

    /** Goes on after the line where a page ended. */
    void after(DeskCursor cursor) {
        String way = order.rising ? ">" : "<";
        where.add("(d." + order.column + ", d.ordinal) " + way + " (cast(:value as " + order.type + "), :ordinal)");
        params.put("value", cursor.value());
        params.put("ordinal", cursor.ordinal());
    }

    Map<String, Object> params() {
        return params;
    }

    /** The names of workshops are joined to the lines shown only. */
    String select(String limit) {
        String way = order.rising ? "asc" : "desc";
        String condition = where.isEmpty() ? "" : " where " + String.join(" and ", where);
        return "select d.*, w.name as workshop from (select * from claim_desk d" + condition + " order by d."
                + order.column
                + " " + way + ", d.ordinal " + way + limit + ") d join workshop w on w.id = d.workshop_id order by d."
                + order.column + " " + way + ", d.ordinal " + way;
    }
}
