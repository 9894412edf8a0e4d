package org.voltdocket.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.voltdocket.casefile.search.CaseQuery;
import org.voltdocket.casefile.search.CaseSearch;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The ways of looking for a text at the desk find the same claims in the same order, whichever of them a page takes. */
@ServerTest
class DeskSearchTest {

    private static final int CLAIMS = 24;

    @Autowired
    private Server server;

    @Autowired
    private DeskRepository store;

    @Autowired
    private CaseSearch cases;

    @Autowired
    private WorkingDayService days;

    @Autowired
    private Clock clock;

    @Autowired
    private JdbcTemplate db;

    private Actor workshop;
    private String mark;

    @BeforeEach
    void claims() {
        workshop = server.newUser(Role.WORKSHOP).actor();
        mark = UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        for (int i = 0; i < CLAIMS; i++) {
            UUID file = UUID.randomUUID();
            db.update(
                    "insert into case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop)"
                            + " values (?, ?, ?, '1M8GDM9AXKP042788', now(), 'test', ?)",
                    file,
                    CaseNumber.of(db.queryForObject("select nextval('case_ordinal')", Long.class))
                            .value(),
                    i % 3 == 0 ? "A-" + i + "-" + mark : mark + "-" + i,
                    workshop.workshop().orElseThrow());
            db.update(
                    "insert into case_workshop (case_id, workshop_id, added_at, added_by) values (?, ?, now(), 'test')",
                    file,
                    workshop.workshop().orElseThrow());
            db.update(
                    "insert into claim (id, case_id, workshop_id, amount, currency, state, version, opened_at, opened_by)"
                            + " values (?, ?, ?, ?, 'EUR', 'draft', 0, now(), 'test')",
                    UUID.randomUUID(),
                    file,
                    workshop.workshop().orElseThrow(),
                    100 + i / 2);
        }
    }

    @ParameterizedTest
    @CsvSource({"1000, 1000, 1000", "2, 1000, 1000", "2, 3, 1000", "2, 3, 4", "0, 1, 1"})
    void everyWayFindsEachClaimOnceAndInOrder(int few, int glance, int most) {
        for (Actor actor : List.of(workshop, server.user(Role.CLERK).actor())) {
            for (String order : List.of("largest", "smallest", "newest", "clearest")) {
                List<DeskItem> seen = walk(actor, order, mark, few, glance, most);
                assertThat(seen)
                        .extracting(DeskItem::claim)
                        .doesNotHaveDuplicates()
                        .hasSize(CLAIMS);
                if (order.equals("smallest")) {
                    assertThat(seen).extracting(DeskItem::amount).isSorted();
                }
            }
            assertThat(walk(actor, "oldest", mark + "-1", few, glance, most))
                    .as("1, 10, 11, 13, 14, 16, 17 and 19")
                    .hasSize(8);
            assertThat(walk(actor, "oldest", mark + "-99", few, glance, most)).isEmpty();
            assertThat(walk(actor, "due", mark, few, glance, most))
                    .as("drafts are due nowhere")
                    .isEmpty();
        }
        assertThat(walk(server.newUser(Role.WORKSHOP).actor(), "oldest", mark, few, glance, most))
                .isEmpty();
    }

    @Test
    void theDeskFindsTheSameCasesAsTheCaseList() {
        for (String text : List.of(
                mark,
                mark + "-1",
                mark.substring(1, 5),
                mark.substring(2) + "-",
                "-3-" + mark.substring(0, 4),
                "A-",
                "1M8GDM9AXKP042788",
                "I1M8GDM9AXKP042788",
                "042788",
                "KP042788",
                "XKP0-42788",
                "XX" + mark)) {
            CaseQuery query = new CaseQuery(
                    text,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    CLAIMS,
                    Optional.empty(),
                    false);
            List<String> expected = cases.page(workshop, query).cases().stream()
                    .map(line -> line.ref().number().value())
                    .toList();
            assertThat(walk(workshop, "newest", text, 2, 3, 4))
                    .as(text)
                    .extracting(DeskItem::number)
                    .containsExactlyInAnyOrderElementsOf(expected);
            assertThat(expected.isEmpty()).as(text).isEqualTo(text.startsWith("XX") || text.startsWith("XKP0"));
        }
    }

    @Test
    void aWorkshopFilterOfOneFindsWhatOneOfManyDoes() {
        UUID own = workshop.workshop().orElseThrow();
        Actor clerk = server.user(Role.CLERK).actor();
        DeskFilter filter = DeskFilter.read(Map.of("state", "all", "workshop", "x", "order", "largest"));
        List<DeskItem> one = store.lines(sql(clerk, filter, List.of(own)), 100);
        List<DeskItem> many = store.lines(sql(clerk, filter, List.of(own, UUID.randomUUID())), 100);
        assertThat(one).hasSize(CLAIMS).isEqualTo(many);
        assertThat(store.lines(sql(clerk, filter, List.of()), 100)).isEmpty();
    }

    private DeskSearchSql sql(Actor actor, DeskFilter filter, List<UUID> workshops) {
        return new DeskSearchSql(actor, filter, workshops, days.setting().calendar(), LocalDate.now(clock));
    }

    private List<DeskItem> walk(Actor actor, String order, String q, int few, int glance, int most) {
        DeskFilter filter = DeskFilter.read(Map.of("state", "all", "q", q, "order", order));
        List<DeskItem> seen = new ArrayList<>();
        Optional<DeskItem> last = Optional.empty();
        List<DeskItem> page;
        do {
            DeskSearchSql sql = sql(actor, filter, List.of());
            last.ifPresent(line -> sql.after(DeskCursor.after(line, filter.order())));
            page = store.lines(sql, 5, few, glance, most);
            seen.addAll(page);
            last = Optional.ofNullable(page.isEmpty() ? null : page.get(page.size() - 1));
        } while (!page.isEmpty());
        return seen;
    }
}
