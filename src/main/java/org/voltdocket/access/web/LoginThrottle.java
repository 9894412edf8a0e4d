package org.voltdocket.access.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;

/**
 * Slows down guessing: after ten wrong passwords for one account from one address, that pair waits, 30 seconds at first
 * and twice as long with every further wrong try, up to 15 minutes. Kept in memory: a restart forgets. Numbers are
 * common practice.
 */
@Component
class LoginThrottle {

    static final int FREE_TRIES = 10;
    static final Duration FIRST_WAIT = Duration.ofSeconds(30);
    static final Duration LONGEST_WAIT = Duration.ofMinutes(15);
    private static final Duration FORGOTTEN_AFTER = Duration.ofHours(1);
    private static final int MOST_PAIRS = 20_000;

    private final Clock clock;

    private final Map<Pair, Tries> tries = new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Pair, Tries> eldest) {
            return size() > MOST_PAIRS;
        }
    };

    LoginThrottle(Clock clock) {
        this.clock = clock;
    }

    /** How long this pair must still wait; zero where it may try. */
    synchronized Duration wait(String account, String address) {
        Tries so = tries.get(new Pair(account, address));
        Instant now = clock.instant();
        return so == null || !now.isBefore(so.until) ? Duration.ZERO : Duration.between(now, so.until);
    }

    synchronized void failed(String account, String address) {
        Instant now = clock.instant();
        tries.merge(new Pair(account, address), new Tries(1, now, now), (old, one) -> {
            boolean forgotten = old.last.plus(FORGOTTEN_AFTER).isBefore(now);
            int count = forgotten ? 1 : old.count + 1;
            return new Tries(count, now, now.plus(waitAfter(count)));
        });
    }

    synchronized void succeeded(String account, String address) {
        tries.remove(new Pair(account, address));
    }

    private static Duration waitAfter(int count) {
        if (count < FREE_TRIES) {
            return Duration.ZERO;
        }
        int doublings = Math.min(count - FREE_TRIES, 10);
        Duration wait = FIRST_WAIT.multipliedBy(1L << doublings);
        return wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    }

    private record Pair(String account, String address) {}

    private record Tries(int count, Instant last, Instant until) {}
}
