package org.voltdocket.demo;

import org.voltdocket.kernel.RequestException;

/** Repeats a step while the server answers that it is still busy with the case. */
public final class RetryWhileBusy {

    private static final int TRIES = 30;
    private static final long PAUSE_MS = 500;
    private static final int CONFLICT = 409;

    private RetryWhileBusy() {}

    /** @throws RequestException if the step still fails after 15 seconds */
    public static void with(Runnable step) {
        for (int i = 1; ; i++) {
            try {
                step.run();
                return;
            } catch (RequestException busy) {
                if (i == TRIES || busy.status() != CONFLICT) {
                    throw busy;
                }
            }
            try {
                Thread.sleep(PAUSE_MS);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("stopped while waiting", stopped);
            }
        }
    }
}
