package org.voltdocket.demo;

import org.voltdocket.kernel.RequestException;

/** Takes a step again a little later where the server is still busy with what the step rests on. */
public final class Patience {

    private static final int TRIES = 30;
    private static final long PAUSE_MS = 500;
    private static final int CONFLICT = 409;

    private Patience() {}

    /** @throws RequestException if it is in the way after a quarter of a minute still */
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
