package org.voltdocket.server.limits;

import java.io.IOException;
import java.net.SocketTimeoutException;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import org.apache.coyote.InputBuffer;
import org.apache.tomcat.util.net.ApplicationBufferHandler;
import org.voltdocket.kernel.RequestException;

/**
 * Reads the body of one request and refuses it when it is too large or too slow.
 *
 * <p>Only the time that the server waits for the sender counts, not the time that it works on what it has read.
 */
final class LimitedInputBuffer implements InputBuffer {

    private final InputBuffer body;
    private final RequestBodyLimits limits;
    private final boolean upload;
    private final BooleanSupplier refused;
    private long bytes;
    private long waitedNanos;

    LimitedInputBuffer(InputBuffer body, RequestBodyLimits limits, boolean upload, BooleanSupplier refused) {
        this.refused = refused;
        this.body = body;
        this.limits = limits;
        this.upload = upload;
    }

    @Override
    public int doRead(ApplicationBufferHandler handler) throws IOException {
        if (refused.getAsBoolean()) {
            return -1;
        }
        long start = System.nanoTime();
        int read;
        try {
            read = body.doRead(handler);
        } catch (SocketTimeoutException e) {
            throw tooSlow();
        }
        waitedNanos += System.nanoTime() - start;
        bytes += Math.max(0, read);
        if (!upload && bytes > limits.maxSize().toBytes()) {
            throw tooLarge(limits);
        }
        if (read >= 0 && isTooSlow()) {
            throw tooSlow();
        }
        return read;
    }

    private boolean isTooSlow() {
        Duration longest = upload ? limits.uploadMaxDuration() : limits.maxDuration();
        double rated = (waitedNanos - limits.grace().toNanos()) / 1e9;
        return waitedNanos > longest.toNanos() || rated > 0 && bytes < rated * limits.minBytesPerSecond();
    }

    static RequestException tooLarge(RequestBodyLimits limits) {
        return RequestException.of(
                        413,
                        "body-too-large",
                        "A request body may have " + limits.maxSize().toBytes()
                                + " bytes. Nothing was changed. Send less at once.")
                .with("maxBytes", limits.maxSize().toBytes());
    }

    private static RequestException tooSlow() {
        return RequestException.of(
                408,
                "slow-request",
                "The request body arrived too slowly, and nothing was changed. Send it again over a better connection.");
    }

    @Override
    public int available() {
        return body.available();
    }
}
