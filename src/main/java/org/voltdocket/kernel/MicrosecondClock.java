package org.voltdocket.kernel;

import java.time.Clock;
import java.time.Duration;

/** The clock that ticks in microseconds, the resolution of the database, so that a stored time reads back equal. */
public final class MicrosecondClock {

    private MicrosecondClock() {}

    /** The system clock in UTC. */
    public static Clock utc() {
        return Clock.tick(Clock.systemUTC(), Duration.ofNanos(1000));
    }
}
