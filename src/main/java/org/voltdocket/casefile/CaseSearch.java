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
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;

/** Lists cases by the moment of opening, page by page from where the last one ended, each page one query over an index. */
@Component
class CaseSearch {

    private static final Pattern SERIAL_PART = Pattern.compile("[A-Z0-9./-]{1,40}");

    private final JdbcClient db;

    CaseSearch(JdbcClient db) {
        this.db = db;
    }

    CasePage page(Actor actor, CaseQuery query) {
        List<String> where = new ArrayList<>();
        Map<String, Object> params = new LinkedHashMap<>();
        if (actor.role() == Role.WORKSHOP) {
            where.add("exists (select 1 from case_workshop w where w.case_id = c.id and w.workshop_id = :workshop)");
            params.put("workshop", actor.workshop().orElseThrow());
        }
        if (!query.q().isEmpty()) {
            where.add(matches(query.q(), params));
        }
        query.leaning().ifPresent(leaning -> {
            where.add("c.leaning = :leaning");
            params.put("leaning", leaning.id());
        });
        query.cause().ifPresent(cause -> {
            where.add("c.first_cause = :cause");
            params.put("cause", cause.id());
        });
        query.verdict().ifPresent(verdict -> {
            where.add("c.battery_verdict = :verdict");
            params.put("verdict", verdict.id());
        });
        query.state().ifPresent(state -> {
            where.add("c.claim_state = :state");
            params.put("state", state);
        });
        query.cursor().map(Cursor::read).ifPresent(cursor -> {
            where.add("(c.opened_at, c.id) " + (query.oldestFirst() ? ">" : "<") + " (:openedAt, :id)");
            params.put("openedAt", Timestamp.from(cursor.openedAt()));
            params.put("id", cursor.id());
        });
        String condition = where.isEmpty() ? "" : " where " + String.join(" and ", where);
        String way = query.oldestFirst() ? "asc" : "desc";
        List<CaseLine> lines = db.sql("select " + LineMapper.COLUMNS + " from case_file c" + condition
                        + " order by c.opened_at " + way + ", c.id " + way + " limit :rows")
                .params(params)
                .param("rows", query.limit() + 1)
                .query(LineMapper.INSTANCE)
                .list();
        if (lines.size() <= query.limit()) {
            return new CasePage(lines, Optional.empty());
        }
        List<CaseLine> shown = lines.subList(0, query.limit());
        CaseLine last = shown.get(shown.size() - 1);
        UUID lastId = last.ref().id();
        return new CasePage(shown, Optional.of(new Cursor(last.openedAt(), lastId).text()));
    }

    /** Any key that the text may be, as a person types it; each alternative has its index. */
    private static String matches(String q, Map<String, Object> params) {
        String serial = q.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        String bare = serial.replace("-", "");
        List<String> any = new ArrayList<>();
        if (SERIAL_PART.matcher(serial).matches()) {
            any.add("c.battery_serial like :part");
            params.put("part", "%" + serial + "%");
        }
        number(q).ifPresent(number -> {
            any.add("c.number = :number");
            params.put("number", number.value());
        });
        String column = switch (bare.length()) {
            case 6 -> "right(c.vin, 6)";
            case 8 -> "right(c.vin, 8)";
            case 17 -> "c.vin";
            case 18 -> bare.startsWith("I") ? "c.vin" : null; // as some labels carry it
            default -> null;
        };
        if (column != null) {
            any.add(column + " = :vin");
            params.put("vin", bare.length() == 18 ? bare.substring(1) : bare);
        }
        return any.isEmpty() ? "false" : "(" + String.join(" or ", any) + ")";
    }

    private static Optional<CaseNumber> number(String q) {
        try {
            return Optional.of(CaseNumber.parse(q));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
