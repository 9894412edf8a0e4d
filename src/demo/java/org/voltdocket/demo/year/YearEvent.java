package org.voltdocket.demo.year;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** An event of a planned case. */
record YearEvent(Instant at, Kind kind, YearCase of) {

    /** In the order in which they follow each other in one case. */
    enum Kind {
        CLAIM,
        DECISION,
        RETURN,
        OUTCOME
    }

    /** Days from arrival to the bench's outcome. */
    private static final int ON_THE_BENCH = 3;

    /** Everything that happened until the year's last day, in the order of time. */
    static List<YearEvent> of(YearPlan plan) {
        Instant end = plan.last().atStartOfDay().toInstant(java.time.ZoneOffset.UTC);
        List<YearEvent> events = new ArrayList<>();
        for (YearCase one : plan.cases()) {
            events.add(new YearEvent(one.claimedAt(), Kind.CLAIM, one));
            one.decidedAt().ifPresent(at -> events.add(new YearEvent(at, Kind.DECISION, one)));
            one.returnedAt().ifPresent(at -> {
                events.add(new YearEvent(at, Kind.RETURN, one));
                Instant done = at.plusSeconds(86_400L * ON_THE_BENCH);
                if (done.isBefore(end)) {
                    events.add(new YearEvent(done, Kind.OUTCOME, one));
                }
            });
        }
        events.sort(Comparator.comparing(YearEvent::at)
                .thenComparing(event -> event.of().number())
                .thenComparing(YearEvent::kind));
        return List.copyOf(events);
    }
}
