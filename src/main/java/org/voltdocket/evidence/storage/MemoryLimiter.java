package org.voltdocket.evidence.storage;

import java.util.concurrent.Semaphore;
import org.springframework.stereotype.Component;

/**
 * Limits the memory for recordings that are read or assessed at the same time to 45 % of the heap, in order of request. The largest
 * recording (five million rows of nine channels, 220 MB) fits a heap of 512 MiB.
 */
@Component
public class MemoryLimiter {

    private static final long MIB = 1L << 20;

    private final int budget;
    private final Semaphore free;

    MemoryLimiter() {
        this(Runtime.getRuntime().maxMemory() * 45 / 100);
    }

    MemoryLimiter(long budgetBytes) {
        this.budget = (int) Math.max(1, Math.min(budgetBytes / MIB, Integer.MAX_VALUE));
        this.free = new Semaphore(budget, true);
    }

    public Lease lease() {
        return new Lease();
    }

    /** A share of the memory; {@code close} returns it. */
    public final class Lease implements AutoCloseable {
        private int held;

        /**
         * Waits until the bytes are free; a request above the budget gets the whole budget. Call it once with the
         * whole amount: two callers that hold a part and wait for the rest would deadlock.
         */
        public void reserve(long bytes) {
            int share = (int) Math.min(bytes / MIB + 1, budget) - held;
            if (share > 0) {
                free.acquireUninterruptibly(share);
                held += share;
            }
        }

        @Override
        public void close() {
            free.release(held);
            held = 0;
        }
    }
}
