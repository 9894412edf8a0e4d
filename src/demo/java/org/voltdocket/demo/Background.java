package org.voltdocket.demo;

import java.time.Duration;

/** One piece of work beside the server's own, at the lowest priority; it is asked to end when the server stops. */
public final class Background {

    private static final Duration PATIENCE = Duration.ofSeconds(10);

    private volatile boolean stopping;
    private Thread worker;

    /** @param work looks at {@link #stopping()} from time to time */
    public void start(String name, Runnable work) {
        worker = new Thread(work, name);
        worker.setDaemon(true);
        worker.setPriority(Thread.MIN_PRIORITY);
        worker.start();
    }

    /** Whether the work is to come to its end. */
    public boolean stopping() {
        return stopping;
    }

    /** Lets what happens just now come to its end, so that no half of it meets a closed database; not for ever. */
    public void stop() throws InterruptedException {
        stopping = true;
        if (worker != null) {
            worker.join(PATIENCE.toMillis());
        }
    }
}
