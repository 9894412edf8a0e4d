package org.voltdocket.desk.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.deadline.BusinessCalendar;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.desk.DeskItem;

/** Adds ages and remaining days, which depend on today, to the items of the desk. */
@Component
class DeskLines {

    private final WorkingDayService days;
    private final Clock clock;

    DeskLines(WorkingDayService days, Clock clock) {
        this.days = days;
        this.clock = clock;
    }

    /**
     * A line as shown.
     *
     * @param age working days since it was handed in
     * @param left working days until it is due, below zero where that is past; null where nobody waits for it
     * @param due {@code over}, {@code today} or {@code later}; null where nobody waits for it
     * @param takeable whether a clerk may take it into review
     */
    record Shown(DeskItem claim, int age, Integer left, String due, boolean takeable) {}

    List<Shown> of(List<DeskItem> lines) {
        BusinessCalendar calendar = days.setting().calendar();
        LocalDate today = LocalDate.now(clock);
        return lines.stream().map(line -> shown(line, calendar, today)).toList();
    }

    private Shown shown(DeskItem line, BusinessCalendar calendar, LocalDate today) {
        LocalDate since = LocalDate.ofInstant(line.waitingSince(), clock.getZone());
        Integer left = line.dueOn() == null ? null : calendar.between(today, line.dueOn());
        String due = left == null ? null : line.dueOn().isBefore(today) ? "over" : left == 0 ? "today" : "later";
        return new Shown(
                line, calendar.between(since, today), left, due, line.state().equals("submitted"));
    }
}
