package org.voltdocket.casefile;

import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;

/** A question for cases as SQL: whose, which, in what order, and each key that the text may be. */
final class CaseSql {

    private static final Pattern SERIAL_PART = Pattern.compile("[A-Z0-9./-]{1,40}");

    private final List<String> where = new ArrayList<>();
    private final List<String> matches = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();
    private final String from;
    private final String order;

    CaseSql(Actor actor, CaseQuery query) {
        boolean own = actor.role() == Role.WORKSHOP;
        // a workshop's own rows have the moment of opening beside them: an index gives them in that order
        String openedAt = own ? "w.opened_at" : "c.opened_at";
        String id = own ? "w.case_id" : "c.id";
        String way = query.oldestFirst() ? " asc" : " desc";
        from = own ? " from case_workshop w join case_file c on c.id = w.case_id" : " from case_file c";
        order = " order by " + openedAt + way + ", " + id + way;
        if (own) {
            and("w.workshop_id = :workshop", "workshop", actor.workshop().orElseThrow());
        }
        query.leaning().ifPresent(leaning -> and("c.leaning = :leaning", "leaning", leaning.id()));
        query.cause().ifPresent(cause -> and("c.first_cause = :cause", "cause", cause.id()));
        query.verdict().ifPresent(verdict -> and("c.battery_verdict = :verdict", "verdict", verdict.id()));
        query.state().ifPresent(state -> and("c.claim_state = :state", "state", state));
        query.cursor().map(Cursor::read).ifPresent(cursor -> {
            String beyond = query.oldestFirst() ? ") > (" : ") < (";
            and("(" + openedAt + ", " + id + beyond + ":openedAt, :id)", "id", cursor.id());
            params.put("openedAt", Timestamp.from(cursor.openedAt()));
        });
        if (!query.q().isEmpty()) {
            read(query.q());
        }
    }

    private void and(String condition, String name, Object value) {
        where.add(condition);
        params.put(name, value);
    }

    /** Any key that the text may be, as a person types it; each alternative has its index. */
    private void read(String q) {
        String serial = q.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        String bare = serial.replace("-", "");
        if (SERIAL_PART.matcher(serial).matches()) {
            match("c.battery_serial like :begin", "begin", serial + "%");
            match("reverse(c.battery_serial) like :end", "end", new StringBuilder(serial).reverse() + "%");
            match("c.battery_serial like :part", "part", "%" + serial + "%");
        }
        number(q).ifPresent(number -> match("c.number = :number", "number", number.value()));
        String column = switch (bare.length()) {
            case 6 -> "right(c.vin, 6)";
            case 8 -> "right(c.vin, 8)";
            case 17 -> "c.vin";
            case 18 -> bare.startsWith("I") ? "c.vin" : null; // as some labels carry it
            default -> null;
        };
        if (column != null) {
            match(column + " = :vin", "vin", bare.length() == 18 ? bare.substring(1) : bare);
        }
        if (matches.isEmpty()) {
            matches.add("false");
        }
    }

    private void match(String condition, String name, Object value) {
        matches.add(condition);
        params.put(name, value);
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

    Map<String, Object> params() {
        return params;
    }

    /** The lines that the text means among the next so many. */
    String glance(int most) {
        return "select " + LineMapper.COLUMNS + " from (select c.*" + from + condition(where) + order + " limit " + most
                + ") c where " + anyMatch()
                + order.replace("w.opened_at", "c.opened_at").replace("w.case_id", "c.id")
                + " limit :rows";
    }

    /** Cases that the text means, by each key's own index, so many at most of each. */
    String hits(int most) {
        return matches.stream()
                .map(match -> {
                    List<String> all = new ArrayList<>(where);
                    all.add(match);
                    return "(select c.id" + from + condition(all) + " limit " + most + ")";
                })
                .collect(Collectors.joining(" union "));
    }

    /** Few were found: lists only these, in place of the text. */
    void only(List<UUID> cases) {
        matches.clear();
        match("c.id = any(:hits)", "hits", cases.toArray(UUID[]::new));
    }

    String select() {
        List<String> all = new ArrayList<>(where);
        if (searches()) {
            all.add("(" + anyMatch() + ")");
        }
        return "select " + LineMapper.COLUMNS + from + condition(all) + order + " limit :rows";
    }

    private String anyMatch() {
        return String.join(" or ", matches);
    }

    private static String condition(List<String> all) {
        return all.isEmpty() ? "" : " where " + String.join(" and ", all);
    }
}
