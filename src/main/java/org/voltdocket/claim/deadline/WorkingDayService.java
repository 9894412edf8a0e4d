package org.voltdocket.claim.deadline;

import java.sql.Date;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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

/** The working days for decisions and answers, the holidays, and the due dates that follow from them. */
@Service
public class WorkingDayService {

    private static final Setting DEFAULT = new Setting(5, 10, List.of());

    private final JdbcClient db;
    private final Trail trail;
    private final Clock clock;

    WorkingDayService(JdbcClient db, Trail trail, Clock clock) {
        this.db = db;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * The current setting.
     *
     * @param decideDays working days of the distributor to decide a submitted claim
     * @param answerDays working days of the workshop to answer an evidence request
     * @param holidays sorted
     */
    public record Setting(int decideDays, int answerDays, List<LocalDate> holidays) {

        public Setting {
            holidays = List.copyOf(holidays);
        }

        /** The calendar with these holidays. */
        public BusinessCalendar calendar() {
            return new BusinessCalendar(holidays);
        }
    }

    /** The current setting; 5 and 10 days without holidays until an administrator sets others. */
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
                .orElse(DEFAULT);
    }

    /**
     * Changes the setting and moves the due dates of all open claims. For {@code ADMIN}.
     *
     * @param holidays dates such as {@code 2026-12-25}, one a line; text after the date is a remark
     * @throws RequestException if a field is invalid
     * @throws AccessDeniedException for other roles
     */
    @Transactional
    public void set(Actor actor, String decideDays, String answerDays, String holidays) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator sets the working days");
        }
        Setting setting = WorkingDaysParser.parse(decideDays, answerDays, holidays);
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

    /** Sets the due dates of open claims that have none, such as imported claims. */
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

    /** One statement for all claims: the due date is computed once for each state and day, not for each claim. */
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
