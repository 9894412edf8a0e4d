package org.voltdocket.casefile.search;

import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.voltdocket.kernel.Actor;

/** A question for cases as SQL: whose, which, in what order, and each key that the text may be. */
final class CaseSearchSql {

    private final List<String> where = new ArrayList<>();
    private final Map<String, Object> params = new LinkedHashMap<>();
    private final String from;
    private final String order;
    private List<String> indexed = List.of();
    private String anyMatch = "";

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
            CaseSearchCondition search = new CaseSearchCondition(CaseSearchText.of(query.q()), "c");
            indexed = search.indexed();
            anyMatch = search.plain();
            params.putAll(search.params());
        }
    }

    private void and(String condition, String name, Object value) {
        where.add(condition);
        params.put(name, value);
    }

    /** How many cases the workshop has, counted up to so many; empty for who sees all. */
    Optional<String> owned(int most) {
        return params.containsKey("workshop")
                ? Optional.of("select count(*) from (select from case_workshop w where w.workshop_id = :workshop limit "
                        + most + ") w")
                : Optional.empty();
    }

    boolean searches() {
        return !anyMatch.isEmpty();
    }

    Map<String, Object> params() {
        return params;
    }

    /** The lines that the text means among the next so many. */
    String glance(int most) {
        return "select " + CaseListItemMapper.COLUMNS + " from (select c.*" + from + condition(where) + order
                + " limit " + most
                + ") c where " + anyMatch
                + order.replace("w.opened_at", "c.opened_at").replace("w.case_id", "c.id")
                + " limit :rows";
    }

    /** Cases that the text means, by each key's own index, so many at most of each. */
    String hits(int most) {
        return indexed.stream()
                .map(condition -> {
                    List<String> all = new ArrayList<>(where);
                    all.add(condition);
                    return "(select c.id" + from + condition(all) + " limit " + most + ")";
                })
                .collect(Collectors.joining(" union "));
    }

    /** Few were found: lists only these, in place of the text. */
    void only(List<UUID> cases) {
        anyMatch = "c.id = any(:hits)";
        params.put("hits", cases.toArray(UUID[]::new));
    }

    String select() {
        List<String> all = new ArrayList<>(where);
        if (searches()) {
            all.add(anyMatch);
        }
        return "select " + CaseListItemMapper.COLUMNS + from + condition(all) + order + " limit :rows";
    }

    private static String condition(List<String> all) {
        return all.isEmpty() ? "" : " where " + String.join(" and ", all);
    }
}
