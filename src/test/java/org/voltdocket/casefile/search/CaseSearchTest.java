package org.voltdocket.casefile.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The ways of looking for a text find the same, whichever of them a page takes; two cases are opened in each moment. */
@ServerTest
class CaseSearchTest {

    private static final int CASES = 30;

    @Autowired
    private Server server;

    @Autowired
    private CaseSearch search;

    @Autowired
    private JdbcTemplate db;

    private Actor workshop;
    private String mark;

    @BeforeEach
    void open() {
        workshop = server.newUser(Role.WORKSHOP).actor();
        mark = UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        UUID id = workshop.workshop().orElseThrow();
        for (int i = 0; i < CASES; i++) {
            UUID file = UUID.randomUUID();
            db.update(
                    "insert into case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop)"
                            + " values (?, ?, ?, '1M8GDM9AXKP042788', timestamptz '2024-02-29' + ? * interval '1 hour', 'test', ?)",
                    file,
                    CaseNumber.of(db.queryForObject("select nextval('case_ordinal')", Long.class))
                            .value(),
                    (i % 3 == 0 ? "A-" + mark + "-Z" : i % 3 == 1 ? mark + "-Y" : "X-" + mark).concat("" + i),
                    i / 2,
                    id);
            db.update(
                    "insert into case_workshop (case_id, workshop_id, added_at, added_by) values (?, ?, now(), 'test')",
                    file,
                    id);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "1000, 1000, false",
        "1000, 1000, true",
        "2, 1000, false",
        "2, 1000, true",
        "2, 1, false",
        "2, 1, true",
        "11, 4, false",
    })
    void everyWayFindsEachCaseOnceAndInOrder(int glance, int mostHits, boolean oldestFirst) {
        for (Actor actor : List.of(workshop, server.user(Role.CLERK).actor())) {
            List<CaseListItem> seen = walk(actor, mark, glance, mostHits, oldestFirst);
            assertThat(seen)
                    .extracting(line -> line.ref().id())
                    .doesNotHaveDuplicates()
                    .hasSize(CASES);
            List<Instant> moments =
                    new ArrayList<>(seen.stream().map(CaseListItem::openedAt).toList());
            if (!oldestFirst) {
                Collections.reverse(moments);
            }
            assertThat(moments).isSorted();
            assertThat(walk(actor, "A-" + mark, glance, mostHits, oldestFirst)).hasSize(CASES / 3);
            assertThat(walk(actor, mark + "-Z27", glance, mostHits, oldestFirst))
                    .hasSize(1);
            assertThat(walk(actor, mark + "-Z99", glance, mostHits, oldestFirst))
                    .isEmpty();
        }
        assertThat(walk(server.newUser(Role.WORKSHOP).actor(), mark, glance, mostHits, oldestFirst))
                .isEmpty();
    }

    /** A case is judged a moment after it was opened; until then its page has no verdict, and is there. */
    @Test
    void aCaseThatIsNotJudgedYetHasItsPage() {
        String number =
                walk(workshop, mark, 1000, 1000, false).get(0).ref().number().value();
        assertThat(server.browser(server.user(Role.CLERK))
                        .get("/cases/" + number)
                        .status())
                .isEqualTo(200);
    }

    @Test
    void theMomentOfOpeningIsThatOfTheCaseAndStands() {
        Integer other = db.queryForObject(
                "select count(*) from case_workshop w join case_file c on c.id = w.case_id"
                        + " where w.workshop_id = ? and w.opened_at = c.opened_at",
                Integer.class,
                workshop.workshop().orElseThrow());
        assertThat(other).isEqualTo(CASES);
        assertThatThrownBy(() -> db.update(
                        "update case_file set opened_at = now() where opened_workshop = ?",
                        workshop.workshop().orElseThrow()))
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("the moment of opening is kept");
    }

    private List<CaseListItem> walk(Actor actor, String q, int glance, int mostHits, boolean oldestFirst) {
        List<CaseListItem> seen = new ArrayList<>();
        Optional<String> cursor = Optional.empty();
        do {
            CaseQuery query = new CaseQuery(
                    q, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), 7, cursor, oldestFirst);
            CasePage page = search.page(actor, query, glance, mostHits);
            seen.addAll(page.cases());
            cursor = page.nextCursor();
        } while (cursor.isPresent());
        return seen;
    }
}
