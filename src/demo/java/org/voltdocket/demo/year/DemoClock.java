package org.voltdocket.demo.year;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.springframework.context.annotation.Primary;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.MicrosecondClock;

/** The demo's clock: the present time, except for the thread that writes the invented past. */
@Component
@Primary
@Profile("demo")
class DemoClock extends Clock {

    private final Clock real = MicrosecondClock.utc();
    private final ThreadLocal<Instant> past = new ThreadLocal<>();

    /** From here on this thread lives then. */
    void liveIn(Instant then) {
        past.set(then);
    }

    /** This thread is back in the present. */
    void comeBack() {
        past.remove();
    }

    @Override
    public Instant instant() {
        Instant then = past.get();
        return then == null ? real.instant() : then;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException("times are UTC");
    }
}
