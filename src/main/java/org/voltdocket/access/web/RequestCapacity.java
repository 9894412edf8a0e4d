package org.voltdocket.access.web;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.voltdocket.kernel.RequestException;

/** Limits how many requests of one kind are carried out at the same time, for each sender and overall. */
final class RequestCapacity {

    private final int perSender;
    private final Semaphore all;
    private final Duration wait;
    private final int maxWaiting;
    private final Map<String, Integer> active = new ConcurrentHashMap<>();

    /** @param wait how long a request waits for others to end; as many may wait as may run */
    RequestCapacity(int overall, int perSender, Duration wait) {
        this.perSender = perSender;
        this.all = new Semaphore(overall, true);
        this.wait = wait;
        this.maxWaiting = overall;
    }

    /**
     * Reserves room for one request.
     *
     * @param sender an account or an address
     * @return to be closed when the request ends
     * @throws RequestException 429 where the sender has too many requests under way, 503 where the server has
     */
    Permit acquire(String sender) {
        int mine = active.merge(sender, 1, Integer::sum);
        Optional<RequestException> refused = Optional.empty();
        if (mine > perSender) {
            refused = Optional.of(RequestException.of(
                    429,
                    "too-many-at-once",
                    "You have " + perSender + " requests of this kind under way, which is the limit for one sender."
                            + " Nothing was stored. Send this one again when another has ended."));
        } else if (!entered()) {
            refused = Optional.of(RequestException.of(
                    503,
                    "server-busy",
                    "The server receives as many requests of this kind as it can. Nothing was stored."
                            + " Send it again in a few seconds."));
        }
        if (refused.isPresent()) {
            leave(sender);
            throw refused.get().retryAfter(5);
        }
        return () -> {
            all.release();
            leave(sender);
        };
    }

    private boolean entered() {
        if (all.tryAcquire()) {
            return true;
        }
        try {
            return all.getQueueLength() < maxWaiting && all.tryAcquire(wait.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private void leave(String sender) {
        active.computeIfPresent(sender, (key, count) -> count == 1 ? null : count - 1);
    }

    /** Room for one request. */
    interface Permit extends AutoCloseable {
        @Override
        void close();
    }
}
