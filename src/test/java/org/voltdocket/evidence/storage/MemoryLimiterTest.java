package org.voltdocket.evidence.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class MemoryLimiterTest {

    private static final long MIB = 1 << 20;

    @Test
    @Timeout(20)
    void letsInOnlyWhatFits() throws InterruptedException {
        MemoryLimiter gate = new MemoryLimiter(100 * MIB);
        AtomicInteger inside = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        CountDownLatch done = new CountDownLatch(12);
        for (int i = 0; i < 12; i++) {
            new Thread(() -> {
                        try (MemoryLimiter.Lease lease = gate.lease()) {
                            lease.reserve(40 * MIB);
                            most.accumulateAndGet(inside.incrementAndGet(), Math::max);
                            Thread.sleep(20);
                            inside.decrementAndGet();
                        } catch (InterruptedException e) {
                            Thread.currentThread().interrupt();
                        }
                        done.countDown();
                    })
                    .start();
        }
        assertThat(done.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(most.get()).isEqualTo(2);
    }

    @Test
    @Timeout(20)
    void oneThatNeedsMoreThanThereIsGetsAllAndGivesItBack() {
        MemoryLimiter gate = new MemoryLimiter(10 * MIB);
        for (int i = 0; i < 3; i++) {
            try (MemoryLimiter.Lease lease = gate.lease()) {
                lease.reserve(1000 * MIB);
                lease.reserve(5 * MIB);
            }
        }
        try (MemoryLimiter.Lease lease = gate.lease()) {
            lease.reserve(9 * MIB);
        }
    }
}
