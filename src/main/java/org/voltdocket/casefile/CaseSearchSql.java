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

/** A question for cases as SQL: whose, which, in what order, and each key that the text may be. */
final class CaseSearchSql {

    private static final Pattern SERIAL_PART = Pattern.compile("[A-Z0-9./-]{1,40}");

    /** From so many characters on a part of a serial has an index that needs to look at few rows ({@code V011__casefile_search.sql}). */
    private static final int SIX = 6;

    private static final int TRIGRAM = 3;

    private final List<String> where = new ArrayList<>();
    private final List<Match> matches = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();
    private final String from;
    private final String order;

    CaseSearchSql(Actor actor, CaseQuery query) {
        boolean own = actor.isWorkshop();
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
        query.cursor().map(CaseCursor::read).ifPresent(cursor -> {
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
            readSerial(serial);
        }
        number(q).ifPresent(number -> match("c.number = :number", "c.number = :number", "number", number.value()));
        String column = switch (bare.length()) {
            case 6 -> "right(c.vin, 6)";
            case 8 -> "right(c.vin, 8)";
            case 17 -> "c.vin";
            case 18 -> bare.startsWith("I") ? "c.vin" : null; // as some labels carry it
            default -> null;
        };
        if (column != null) {
            match(column + " = :vin", column + " = :vin", "vin", bare.length() == 18 ? bare.substring(1) : bare);
        }
        if (matches.isEmpty()) {
            matches.add(new Match("false", "false"));
        }
    }

    /** Any part of a serial; of one or two letters the begin or end only, for no index knows where else they stand. */
    private void readSerial(String part) {
        if (part.length() < TRIGRAM) {
            match("c.battery_serial like :begin", "c.battery_serial like :begin", "begin", part + "%");
            String end = "reverse(c.battery_serial) like :end";
            match(end, end, "end", new StringBuilder(part).reverse() + "%");
            return;
        }
        String plain = "strpos(c.battery_serial, :part) > 0";
        if (part.length() < SIX) {
            match("c.battery_serial like :like", plain, "like", "%" + part + "%");
        } else {
            match(
                    "(serial_sixes(c.battery_serial) @> cast(:sixes as text[]) and " + plain + ")",
                    plain,
                    "sixes",
                    sixes(part));
        }
        params.put("part", part);
    }

    /** Sixes of letters that cover the part, as few as do. */
    private static String[] sixes(String part) {
        List<String> sixes = new ArrayList<>();
        for (int from = 0; from + SIX < part.length(); from += SIX) {
            sixes.add(part.substring(from, from + SIX));
        }
        sixes.add(part.substring(part.length() - SIX));
        return sixes.toArray(String[]::new);
    }

    /**
     * A key that the text may be.
     *
     * @param indexed as its index serves it
     * @param plain the same for a row that is there already
     */
    private record Match(String indexed, String plain) {}

    private void match(String indexed, String plain, String name, Object value) {
        matches.add(new Match(indexed, plain));
        params.put(name, value);
    }

    private static Optional<CaseNumber> number(String q) {
        try {
            return Optional.of(CaseNumber.parse(q));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** How many cases the workshop has, counted up to so many; empty for who sees all. */
    Optional<String> owned(int most) {
        return params.containsKey("workshop")
                ? Optional.of("select count(*) from (select from case_workshop w where w.workshop_id = :workshop limit "
                        + most + ") w")
                : Optional.empty();
    }

    boolean searches() {
        return !matches.isEmpty();
    }

    Map<String, Object> params() {
        return params;
    }

    /** The lines that the text means among the next so many. */
    String glance(int most) {
        return "select " + CaseListItemMapper.COLUMNS + " from (select c.*" + from + condition(where) + order
                + " limit " + most
                + ") c where " + anyMatch()
                + order.replace("w.opened_at", "c.opened_at").replace("w.case_id", "c.id")
                + " limit :rows";
    }

    /** Cases that the text means, by each key's own index, so many at most of each. */
    String hits(int most) {
        return matches.stream()
                .map(match -> {
                    List<String> all = new ArrayList<>(where);
                    all.add(match.indexed());
                    return "(select c.id" + from + condition(all) + " limit " + most + ")";
                })
                .collect(Collectors.joining(" union "));
    }

    /** Few were found: lists only these, in place of the text. */
    void only(List<UUID> cases) {
        matches.clear();
        match("c.id = any(:hits)", "c.id = any(:hits)", "hits", cases.toArray(UUID[]::new));
    }

    String select() {
        List<String> all = new ArrayList<>(where);
        if (searches()) {
            all.add("(" + anyMatch() + ")");
        }
        return "select " + CaseListItemMapper.COLUMNS + from + condition(all) + order + " limit :rows";
    }

    private String anyMatch() {
        return matches.stream().map(Match::plain).collect(Collectors.joining(" or "));
    }

    private static String condition(List<String> all) {
        return all.isEmpty() ? "" : " where " + String.join(" and ", all);
    }
}
