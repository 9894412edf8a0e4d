package org.voltdocket.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.claim.deadline.BusinessCalendar;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The desk on the running server: what it lists, counts and exports is what the claims themselves say. */
@ServerTest
class DeskServerTest {

    @Autowired
    private Server server;

    @Autowired
    private DeskService desk;

    @Autowired
    private ClaimCounts tally;

    @Autowired
    private WorkingDayService days;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Clock clock;

    private Server.User owner;
    private Client workshop;
    private Client clerk;

    @BeforeEach
    void people() {
        owner = server.newUser(Role.WORKSHOP);
        workshop = server.as(owner);
        clerk = server.as(Role.CLERK);
    }

    private SentCase claimed(String amount, String... steps) {
        SentCase sent = SentCase.open(workshop);
        workshop.postJson(sent.api() + "/claim", "{\"amount\":\"" + amount + "\",\"currency\":\"EUR\"}");
        for (String step : steps) {
            Client who = List.of("submit", "answer").contains(step) ? workshop : clerk;
            Answer answer = who.postJson(
                    sent.api() + "/claim/" + step,
                    step.equals("ask")
                            ? "{\"items\":[\"charging-test\"]}"
                            : "{\"reason\":\"Long enough to stand against what the evidence leans to.\"}");
            assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
        }
        return sent;
    }

    private List<String> numbers(String... filter) {
        return numbers(owner, filter);
    }

    private List<String> numbers(Server.User who, String... filter) {
        return desk.page(who.actor(), DeskFilter.read(params(filter)), Optional.empty()).lines().stream()
                .map(DeskItem::number)
                .toList();
    }

    private static Map<String, String> params(String... filter) {
        Map<String, String> params = new java.util.LinkedHashMap<>();
        for (int i = 0; i < filter.length; i += 2) {
            params.put(filter[i], filter[i + 1]);
        }
        return params;
    }

    @Test
    void aWorkshopSeesItsOwnClaimsAndEveryStepMovesThem() {
        SentCase draft = claimed("10.00");
        SentCase open = claimed("20.00", "submit");
        SentCase review = claimed("30.00", "submit", "take");
        SentCase answered = claimed("40.00", "submit", "take", "ask", "answer");
        SentCase done = claimed("50.00", "submit", "take", "goodwill", "settle");
        assertThat(numbers("order", "smallest")).containsExactly(open.number(), review.number(), answered.number());
        assertThat(numbers()).first().as("answered comes first").isEqualTo(answered.number());
        assertThat(numbers("state", "draft")).containsExactly(draft.number());
        assertThat(numbers("state", "settled")).containsExactly(done.number());
        assertThat(numbers("state", "all", "order", "largest"))
                .containsExactly(done.number(), answered.number(), review.number(), open.number(), draft.number());
        assertThat(numbers("from", "25", "to", "35,50")).containsExactly(review.number());
        assertThat(numbers("q", review.number())).containsExactly(review.number());
        assertThat(numbers("taker", "nobody")).containsExactly(open.number());
        assertThat(numbers(server.newUser(Role.WORKSHOP), "state", "all")).isEmpty();
        assertThat(numbers(server.user(Role.CLERK), "q", open.number())).containsExactly(open.number());
        assertThat(numbers(server.user(Role.CLERK), "q", review.number(), "taker", "me"))
                .containsExactly(review.number());
        String name = db.sql("select name from workshop where id = ?")
                .param(owner.actor().workshop().orElseThrow())
                .query(String.class)
                .single();
        assertThat(numbers(server.user(Role.CLERK), "state", "all", "workshop", name.toUpperCase()))
                .hasSize(5);
        assertThat(db.sql("select count(*) from claim_desk d join claim c on c.id = d.claim_id where c.state <> d.state"
                                + " or c.version <> d.version")
                        .query(Long.class)
                        .single())
                .as("rows of the desk that say otherwise than their claim")
                .isZero();
    }

    @Test
    void theLeaningFollowsTheAssessmentAndCountsFollowBoth() {
        SentCase one = claimed("10.00", "submit");
        SentCase two = claimed("20.00", "submit");
        String before = leaning(one);
        one.send(
                workshop,
                "test.json",
                "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":10.4,\"temperatureC\":18}"
                        .getBytes(java.nio.charset.StandardCharsets.UTF_8),
                null);
        String judged = clerk.get(one.api()).json().at("/assessment/leaning").stringValue();
        assertThat(leaning(one)).isEqualTo(judged);
        assertThat(numbers("leaning", judged)).contains(one.number());
        Map<String, Map<String, Long>> counts = desk.counts(owner.actor());
        assertThat(counts.get("submitted").values().stream().mapToLong(n -> n).sum())
                .isEqualTo(2);
        assertThat(counts.get("submitted").get(judged)).isEqualTo(before.equals(judged) ? 2 : 1);
        assertThat(numbers("state", "submitted")).contains(two.number());

        tally.merge();
        assertThat(desk.counts(owner.actor())).isEqualTo(counts);
        Map<String, Long> counted = new java.util.TreeMap<>();
        desk.counts(server.user(Role.ADMIN).actor())
                .forEach((state, leanings) -> counted.put(
                        state, leanings.values().stream().mapToLong(n -> n).sum()));
        Map<String, Long> there = new java.util.TreeMap<>();
        db.sql("select state, count(*) as n from claim group by state").query(row -> {
            there.put(row.getString("state"), row.getLong("n"));
        });
        assertThat(counted).isEqualTo(there);
    }

    private String leaning(SentCase sent) {
        return desk.page(owner.actor(), DeskFilter.read(Map.of("q", sent.number(), "state", "all")), Optional.empty())
                .lines()
                .get(0)
                .leaning();
    }

    @Test
    void pagesFollowEachOtherWithoutGapInEveryOrder() {
        Server.User other = server.newUser(Role.WORKSHOP);
        SentCase one = SentCase.open(server.as(other));
        server.as(other).postJson(one.api() + "/claim", "{\"amount\":\"7.00\",\"currency\":\"EUR\"}");
        server.as(other).postJson(one.api() + "/claim/submit", "{}");
        // many more of the same workshop, with equal values everywhere, straight into the desk's table
        db.sql("""
                        with c as (insert into claim (id, case_id, workshop_id, amount, currency, state, opened_at, opened_by)
                            select gen_random_uuid(), k.case_id, k.workshop_id, k.amount + n % 3, k.currency, 'settled',
                                k.opened_at, k.opened_by
                            from claim k join case_file f on f.id = k.case_id, generate_series(1, 120) n where f.number = ?
                            returning id)
                        select count(*) from c""").param(one.number()).query(Long.class).single();
        for (DeskOrder order : DeskOrder.values()) {
            DeskFilter filter = DeskFilter.read(Map.of("state", "all", "order", order.id()));
            List<Long> ordinals = new ArrayList<>();
            Optional<String> cursor = Optional.empty();
            do {
                DeskService.Found found = desk.page(other.actor(), filter, cursor);
                found.lines().forEach(line -> ordinals.add(line.ordinal()));
                cursor = found.next();
            } while (cursor.isPresent());
            List<Long> streamed = new ArrayList<>();
            desk.each(other.actor(), filter, line -> streamed.add(line.ordinal()));
            assertThat(ordinals).as(order.id()).isEqualTo(streamed).doesNotHaveDuplicates();
            assertThat(ordinals).hasSize(order == DeskOrder.DUE ? 1 : 121);
        }
        assertThatThrownBy(() -> desk.page(other.actor(), DeskFilter.read(Map.of()), Optional.of("bm9uZQ")))
                .isInstanceOf(RequestException.class);
    }

    @Test
    void theDueDayIsReckonedByWorkingDaysAndMovesWithTheSetting() {
        SentCase sent = claimed("10.00", "submit");
        SentCase asked = claimed("20.00", "submit", "take", "ask");
        LocalDate today = LocalDate.now(clock);
        BusinessCalendar plain = days.setting().calendar();
        assertThat(due(sent)).isEqualTo(plain.after(today, days.setting().decideDays()));
        assertThat(due(asked)).isEqualTo(plain.after(today, days.setting().answerDays()));
        WorkingDayService.Setting before = days.setting();
        LocalDate off = plain.after(today, 1);
        try {
            days.set(server.user(Role.ADMIN).actor(), "2", "3", off + " a local fair\n\n");
            BusinessCalendar changed = new BusinessCalendar(Set.of(off));
            assertThat(due(sent)).isEqualTo(changed.after(today, 2));
            assertThat(due(asked)).isEqualTo(changed.after(today, 3));
            assertThat(numbers("due", "week")).contains(sent.number());
            assertThat(numbers("due", "over")).isEmpty();
        } finally {
            days.set(
                    server.user(Role.ADMIN).actor(),
                    Integer.toString(before.decideDays()),
                    Integer.toString(before.answerDays()),
                    String.join(
                            "\n",
                            before.holidays().stream().map(LocalDate::toString).toList()));
        }
        assertThat(due(sent)).isEqualTo(plain.after(today, before.decideDays()));
    }

    private LocalDate due(SentCase sent) {
        return db.sql("select due_on from claim_desk where number = ?")
                .param(sent.number())
                .query(LocalDate.class)
                .single();
    }

    @Test
    void theAgeCountsWorkingDays() {
        SentCase sent = claimed("10.00", "submit");
        LocalDate today = LocalDate.now(clock);
        BusinessCalendar calendar = days.setting().calendar();
        for (int back = 0; back < 12; back++) {
            Instant since = today.minusDays(back).atTime(9, 0).toInstant(ZoneOffset.UTC);
            db.sql("update claim_desk set waiting_since = ? where number = ?")
                    .param(since.atOffset(ZoneOffset.UTC))
                    .param(sent.number())
                    .update();
            int age = calendar.between(today.minusDays(back), today);
            assertThat(numbers("age", Integer.toString(age)))
                    .as("%d days", back)
                    .hasSize(1);
            assertThat(numbers("age", Integer.toString(age + 1)))
                    .as("%d days", back)
                    .isEmpty();
        }
    }

    @Test
    void severalAreTakenAtOnceAndEachAnswersForItself() {
        SentCase one = claimed("10.00", "submit");
        SentCase gone = claimed("20.00", "submit", "take");
        Client page = server.browser(server.newUser(Role.CLERK));
        Answer answer = page.postForm(
                "/desk/take",
                Map.of("claim", one.number() + ":1," + gone.number() + ":1,V-000-000-1:1", "order", "oldest"));
        assertThat(answer.status()).isEqualTo(302);
        assertThat(answer.header("location").orElseThrow()).endsWith("/desk?order=oldest");
        String shown = page.get("/desk?order=oldest").text().replaceAll("\\s+", " ");
        assertThat(shown)
                .contains(one.number() + "</a> <strong>review started.", gone.number() + "</a> <strong>not started.");
        assertThat(shown).contains(server.user(Role.CLERK).name() + " took the step");
        assertThat(clerk.get(one.api()).json().at("/claim/state").stringValue()).isEqualTo("in-review");
    }

    @Test
    void theExportHoldsExactlyWhatTheFilterShowsAndNoFormula() {
        Set<String> expected = new HashSet<>();
        for (int i = 0; i < 3; i++) {
            expected.add(claimed("10." + i + "0", "submit").number());
        }
        claimed("99.00", "submit");
        String evil = "=HYPERLINK(\"x\") " + owner.name();
        db.sql("update workshop set name = ? where id = ?")
                .param(evil)
                .param(owner.actor().workshop().orElseThrow())
                .update();
        Answer csv = server.browser(owner).get("/desk/claims.csv?to=50&order=smallest");
        assertThat(csv.header("content-type").orElseThrow()).startsWith("text/csv");
        assertThat(csv.text()).contains("\r\n");
        List<CsvRecord> records =
                CsvReader.builder().ofCsvRecord(csv.text()).stream().toList();
        assertThat(records.get(0).getField(0)).isEqualTo("number");
        assertThat(records)
                .hasSize(4)
                .allSatisfy(record -> assertThat(record.getFieldCount()).isEqualTo(13));
        assertThat(records.stream().skip(1).map(record -> record.getField(0)))
                .containsExactlyInAnyOrderElementsOf(expected);
        assertThat(records.get(1).getField(3)).isEqualTo("'" + evil);
        assertThat(records.stream().skip(1).map(record -> record.getField(8)))
                .containsExactly("10.00", "10.10", "10.20");
    }

    @Test
    void aFilterIsSavedForItsAccountAlone() {
        Client mine = server.browser(server.newUser(Role.CLERK));
        assertThat(mine.postForm("/desk/filters", Map.of("name", "Wires & posts", "cause", "wiring", "q", "A&B %"))
                        .status())
                .isEqualTo(302);
        String page = mine.get("/desk").text();
        assertThat(page).contains("Wires &amp; posts", "/desk?q=A%26B%20%25&amp;cause=wiring");
        assertThat(mine.get("/desk?q=A%26B%20%25&cause=wiring").status()).isEqualTo(200);
        assertThat(server.browser(server.newUser(Role.CLERK)).get("/desk").text())
                .doesNotContain("Wires");
        mine.postForm("/desk/filters/delete", Map.of("name", "Wires & posts"));
        assertThat(mine.get("/desk").text()).doesNotContain("Wires");
    }

    @Test
    void aFilterThatCannotBeRightIsRefusedByName() {
        Client page = server.browser(server.newUser(Role.CLERK));
        for (String wrong : List.of(
                "state=lost",
                "leaning=up",
                "cause=luck",
                "least=101",
                "age=-1",
                "from=much",
                "due=never",
                "order=none",
                "cursor=x",
                "q=" + "A".repeat(61))) {
            Answer answer = page.get("/desk?" + wrong);
            assertThat(answer.status()).as(wrong).isEqualTo(400);
            assertThat(answer.text()).as(wrong).contains("role=\"alert\"");
        }
        assertThat(page.get("/desk?q=AB").status()).isEqualTo(200);
    }

    /** Leaving some out without a word would look as if they had no claims. */
    @Test
    void aPartOfANameThatMeansTooManyWorkshopsIsRefusedByItsField() {
        Client page = server.browser(server.newUser(Role.CLERK));
        String part = "Many " + Long.toString(System.nanoTime(), 36);
        for (int i = 0; i < DeskService.WORKSHOPS; i++) {
            named(part + " " + i);
        }
        assertThat(page.get("/desk/claims.csv?workshop=" + part.replace(' ', '+'))
                        .status())
                .isEqualTo(200);
        named(part + " one more");
        Answer refused = page.get("/desk?workshop=" + part.replace(' ', '+'));
        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.text()).contains("more than 50 workshops", "Write more of the name");
        assertThat(page.get("/desk/claims.csv?workshop=" + part.replace(' ', '+'))
                        .status())
                .isEqualTo(400);
    }

    private void named(String name) {
        db.sql("insert into workshop (id, name, created_at, version) values (gen_random_uuid(), ?, now(), 0)")
                .param(name)
                .update();
    }
}
