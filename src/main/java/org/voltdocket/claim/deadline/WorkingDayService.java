package org.voltdocket.claim.deadline;

import java.sql.Date;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.claim.ClaimChangedEvent;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/** How many working days there are to decide and to answer, which days are off, and the due days that follow from it. */
@Service
public class WorkingDayService {

    private static final int MOST_HOLIDAYS = 1000;
    private static final int MOST_DAYS = 250;
    private static final Setting START = new Setting(5, 10, List.of());

    private final JdbcClient db;
    private final Trail trail;
    private final Clock clock;

    WorkingDayService(JdbcClient db, Trail trail, Clock clock) {
        this.db = db;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * What is set.
     *
     * @param decideDays working days for the distributor after a claim came to it
     * @param answerDays working days for the workshop after it was asked
     * @param holidays days off, sorted
     */
    public record Setting(int decideDays, int answerDays, List<LocalDate> holidays) {

        public Setting {
            holidays = List.copyOf(holidays);
        }

        /** The calendar that follows from it. */
        public BusinessCalendar calendar() {
            return new BusinessCalendar(holidays);
        }
    }

    /** The setting that counts now; 5 and 10 days without holidays until an administrator sets others. */
    @Transactional(readOnly = true)
    public Setting setting() {
        return db.sql("select decide_days, answer_days, holidays from claim_working_days order by ordinal desc limit 1")
                .query((row, number) -> new Setting(
                        row.getInt("decide_days"),
                        row.getInt("answer_days"),
                        Arrays.stream((Date[]) row.getArray("holidays").getArray())
                                .map(Date::toLocalDate)
                                .toList()))
                .optional()
                .orElse(START);
    }

    /**
     * Sets the days and moves every open due day accordingly. For {@code ADMIN}.
     *
     * @param holidays dates such as {@code 2026-12-25}, one a line; what follows a date on its line is a remark
     * @throws RequestException if a field cannot be right
     * @throws AccessDeniedException for other roles
     */
    @Transactional
    public void set(Actor actor, String decideDays, String answerDays, String holidays) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator sets the working days");
        }
        Setting setting = new Setting(
                days("decideDays", decideDays), days("answerDays", answerDays), List.copyOf(dates(holidays)));
        Setting before = setting();
        db.sql("insert into claim_working_days (decide_days, answer_days, holidays, recorded_at, recorded_by)"
                        + " values (?, ?, ?, ?, ?)")
                .param(setting.decideDays())
                .param(setting.answerDays())
                .param(setting.holidays().stream().map(Date::valueOf).toArray(Date[]::new))
                .param(now().atOffset(ZoneOffset.UTC))
                .param(actor.user())
                .update();
        moveAll(setting);
        trail.record(
                actor,
                "working-days-set",
                "desk",
                Map.of("desk.days", Map.of("old", text(before), "new", text(setting))));
    }

    /** Sets the due date of a claim after a step. */
    @EventListener
    void setDueDate(ClaimChangedEvent change) {
        UUID claimId = change.claimId();
        LocalDate due = due(setting(), change.state(), LocalDate.ofInstant(change.at(), clock.getZone()));
        if (due != null) {
            db.sql("update claim_desk set due_on = ? where claim_id = ?")
                    .param(due)
                    .param(claimId)
                    .update();
        }
    }

    /** Claims that were open before there were due days get theirs. */
    @EventListener(ApplicationReadyEvent.class)
    @Transactional
    public void fillBlanks() {
        boolean blank = db.sql("select exists (select 1 from claim_desk where open and due_on is null)")
                .query(Boolean.class)
                .single();
        if (blank) {
            moveAll(setting());
        }
    }

    private static LocalDate due(Setting setting, ClaimState state, LocalDate from) {
        return switch (state) {
            case SUBMITTED, IN_REVIEW -> setting.calendar().after(from, setting.decideDays());
            case EVIDENCE_ASKED -> setting.calendar().after(from, setting.answerDays());
            default -> null;
        };
    }

    /** One statement for all: the due day is reckoned once for each state and day, not once a claim. */
    private void moveAll(Setting setting) {
        String from =
                "(select (max(s.taken_at) at time zone 'UTC')::date from claim_step s where s.claim_id = d.claim_id and"
                        + " s.action in ('submit', 'ask', 'answer'))";
        record Day(String state, LocalDate from) {}
        List<Day> days = new ArrayList<>(db.sql(
                        "select distinct d.state, " + from + " as since from claim_desk d where d.open")
                .query((row, number) -> new Day(row.getString("state"), row.getObject("since", LocalDate.class)))
                .list());
        days.removeIf(day -> day.from() == null);
        db.sql(
                        "update claim_desk d set due_on = m.due from unnest(?::text[], ?::date[], ?::date[]) as m (state, since, due)"
                                + " where d.open and d.state = m.state and " + from + " = m.since")
                .param(days.stream().map(Day::state).toArray(String[]::new))
                .param(days.stream().map(day -> Date.valueOf(day.from())).toArray(Date[]::new))
                .param(days.stream()
                        .map(day -> Date.valueOf(due(setting, ClaimState.of(day.state()), day.from())))
                        .toArray(Date[]::new))
                .update();
    }

    private static int days(String field, String text) {
        String digits = text == null ? "" : text.strip();
        if (digits.matches("\\d{1,3}")) {
            int days = Integer.parseInt(digits);
            if (days >= 1 && days <= MOST_DAYS) {
                return days;
            }
        }
        throw RequestException.invalid(
                "desk-refused",
                field,
                "Working days are a whole number from 1 to " + MOST_DAYS + "; read '" + digits + "'.");
    }

    private static TreeSet<LocalDate> dates(String text) {
        TreeSet<LocalDate> dates = new TreeSet<>();
        int line = 0;
        for (String row : (text == null ? "" : text).split("\\R")) {
            line++;
            String first = row.strip().split("\\s+", 2)[0];
            if (first.isEmpty()) {
                continue;
            }
            try {
                dates.add(LocalDate.parse(first));
            } catch (DateTimeParseException e) {
                throw RequestException.invalid(
                        "desk-refused",
                        "holidays",
                        "Line " + line + " of the holidays begins with no date such as 2026-12-25; read '" + first
                                + "'.");
            }
        }
        if (dates.size() > MOST_HOLIDAYS) {
            throw RequestException.invalid(
                    "desk-refused",
                    "holidays",
                    "At most " + MOST_HOLIDAYS + " holidays are kept; read " + dates.size() + ".");
        }
        return dates;
    }

    private static String text(Setting setting) {
        return setting.decideDays() + " / " + setting.answerDays() + " / "
                + String.join(
                        " ",
                        setting.holidays().stream().map(LocalDate::toString).toList());
    }

    private Instant now() {
        return clock.instant();
    }
}
