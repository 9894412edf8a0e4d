package org.voltdocket.casefile.search;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.kernel.Actor;

/**
 * Lists cases by the moment of opening, page by page from where the last one ended. A text is looked for in ways that
 * find the same: in each case of a workshop that has few; among the next few in the order, which fills a page where the text is common; by the index of each key it
 * may be, where it is rare; else by walking on in the order, which meets a page of many hits soon.
 */
@Component
@Transactional(readOnly = true)
public class CaseSearch {

    /** So many are read one by one before an index is asked; a page of 50 is full by then where every 40th is meant. */
    private static final int GLANCE = 2000;

    /** More hits than these are not sorted. */
    private static final int MOST_HITS = 5000;

    private final JdbcClient db;

    CaseSearch(JdbcClient db) {
        this.db = db;
    }

    /**
     * One page of the cases that the actor may see, newest first.
     *
     * @throws IllegalArgumentException if the cursor is none that a list gave
     */
    public CasePage page(Actor actor, CaseQuery query) {
        return page(actor, query, GLANCE, MOST_HITS);
    }

    CasePage page(Actor actor, CaseQuery query, int glance, int mostHits) {
        List<CaseListItem> lines = lines(new CaseSearchSql(actor, query), query.limit() + 1, glance, mostHits);
        if (lines.size() <= query.limit()) {
            return new CasePage(lines, Optional.empty());
        }
        List<CaseListItem> shown = lines.subList(0, query.limit());
        CaseListItem last = shown.get(shown.size() - 1);
        return new CasePage(
                shown, Optional.of(new CaseCursor(last.openedAt(), last.ref().id()).text()));
    }

    private List<CaseListItem> lines(CaseSearchSql sql, int rows, int glance, int mostHits) {
        if (!sql.searches() || fewer(sql, glance)) {
            return list(sql.select(), sql, rows);
        }
        List<CaseListItem> near = list(sql.glance(glance), sql, rows);
        if (near.size() == rows) {
            return near;
        }
        List<UUID> hits = db.sql(sql.hits(mostHits + 1))
                .params(sql.params())
                .query(UUID.class)
                .list();
        if (hits.size() <= mostHits) {
            sql.only(hits);
        }
        return list(sql.select(), sql, rows);
    }

    /** Whether the workshop has so few cases that each is read. */
    private boolean fewer(CaseSearchSql sql, int than) {
        return sql.owned(than)
                .map(count ->
                        db.sql(count).params(sql.params()).query(Long.class).single() < than)
                .orElse(false);
    }

    private List<CaseListItem> list(String select, CaseSearchSql sql, int rows) {
        return db.sql(select)
                .params(sql.params())
                .param("rows", rows)
                .query(CaseListItemMapper.INSTANCE)
                .list();
    }
}
