package org.voltdocket.demo;

import java.time.Duration;

/** A background task at the lowest priority that ends when the server stops. */
public final class BackgroundThread {

    private static final Duration TIMEOUT = Duration.ofSeconds(10);

    private volatile boolean stopping;
    private Thread worker;

    /** @param work checks {@link #stopping()} regularly */
    public void start(String name, Runnable work) {
        worker = new Thread(work, name);
        worker.setDaemon(true);
        worker.setPriority(Thread.MIN_PRIORITY);
        worker.start();
    }

    /** Whether the work should end. */
    public boolean stopping() {
        return stopping;
    }

    /** Waits a limited time for the current step to end, so that it does not meet a closed database. */
    public void stop() throws InterruptedException {
        stopping = true;
        if (worker != null) {
            worker.join(TIMEOUT.toMillis());
        }
    }
}
