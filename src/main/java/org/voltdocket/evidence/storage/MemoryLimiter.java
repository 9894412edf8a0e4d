package org.voltdocket.evidence.storage;

import java.util.concurrent.Semaphore;
import org.springframework.stereotype.Component;

/**
 * Shares the memory for recordings under way out fairly: as many at a time as fit into 45 % of the heap. The largest
 * recording (five million rows of nine channels, 220 MB) fits a heap of 512 MiB alone.
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

    /** A share that is given back when closed. */
    public final class Lease implements AutoCloseable {
        private int held;

        /**
         * Waits until so many bytes are free; one that asks for more than there is gets all. Call it once with the
         * whole need, or later with no more: two that hold a part and wait for the rest would wait for ever.
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
