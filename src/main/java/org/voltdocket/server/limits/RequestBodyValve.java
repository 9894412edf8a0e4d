package org.voltdocket.server.limits;

import jakarta.servlet.ServletException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicBoolean;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.apache.coyote.InputBuffer;
import org.apache.tomcat.util.net.ApplicationBufferHandler;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Configuration;
import org.voltdocket.access.web.RequestBodyFilter;
import org.voltdocket.access.web.RequestCapacities;

/**
 * Limits size, rate and duration of every request body, wherever it is read: by a controller, as form parameters or as
 * multipart.
 *
 * <p>After a body that was refused unread, the rest is read for a short time from a sender that is quick, so that it sees the
 * answer instead of a broken connection; then the connection is closed.
 */
public final class RequestBodyValve extends ValveBase {

    /** Bytes that are read to their end, so that the connection stays open. */
    private static final int SMALL = 65_536;

    private static final Duration DRAIN_TIME = Duration.ofSeconds(5);
    private static final Duration DRAIN_PAUSE = Duration.ofMillis(300);

    private final RequestBodyLimits limits;

    RequestBodyValve(RequestBodyLimits limits) {
        super(true);
        this.limits = limits;
    }

    @Override
    public void invoke(Request request, Response response) throws IOException, ServletException {
        org.apache.coyote.Request raw = request.getCoyoteRequest();
        if (isRead(raw)) {
            getNext().invoke(request, response);
            return;
        }
        boolean upload = RequestCapacities.isUpload(request.getContentType());
        InputBuffer body = raw.getInputBuffer();
        raw.setInputBuffer(new LimitedInputBuffer(
                body, limits, upload, () -> request.getAttribute(RequestBodyFilter.REFUSED) != null));
        try {
            getNext().invoke(request, response);
        } finally {
            raw.setInputBuffer(body);
            if (!request.isAsync() && !isRead(raw)) {
                refuseRest(raw, response);
            }
        }
    }

    private static void refuseRest(org.apache.coyote.Request raw, Response response) throws IOException {
        boolean small = raw.getContentLengthLong() >= 0 && raw.getContentLengthLong() <= SMALL;
        if (!small && !response.isCommitted()) {
            response.setHeader("Connection", "close");
        }
        response.finishResponse();
        drain(raw);
        if (!small || !isRead(raw)) {
            raw.action(ActionCode.DISABLE_SWALLOW_INPUT, null);
        }
    }

    private static boolean isRead(org.apache.coyote.Request raw) {
        AtomicBoolean read = new AtomicBoolean();
        raw.action(ActionCode.REQUEST_BODY_FULLY_READ, read);
        return read.get();
    }

    /** Reads what arrives without waiting for it longer than {@link #DRAIN_PAUSE}. */
    private static void drain(org.apache.coyote.Request raw) {
        Discard discard = new Discard();
        long start = System.nanoTime();
        long last = start;
        try {
            while (System.nanoTime() - start < DRAIN_TIME.toNanos() && !isRead(raw)) {
                raw.action(ActionCode.AVAILABLE, Boolean.TRUE);
                if (raw.getAvailable() > 0) {
                    if (raw.doRead(discard) < 0) {
                        return;
                    }
                    last = System.nanoTime();
                } else if (System.nanoTime() - last > DRAIN_PAUSE.toNanos()) {
                    return;
                } else {
                    Thread.sleep(2);
                }
            }
        } catch (IOException e) {
            // the sender has closed the connection
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Takes what is read and forgets it. */
    private static final class Discard implements ApplicationBufferHandler {
        private ByteBuffer buffer = ByteBuffer.allocate(0);

        @Override
        public void setByteBuffer(ByteBuffer buffer) {
            this.buffer = buffer;
        }

        @Override
        public ByteBuffer getByteBuffer() {
            return buffer;
        }

        @Override
        public void expand(int size) {
            // the buffer belongs to the connection
        }
    }

    /** Puts the valve before everything else. */
    @Configuration(proxyBeanMethods = false)
    @EnableConfigurationProperties(RequestBodyLimits.class)
    static class Registration implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

        private final RequestBodyLimits limits;

        Registration(RequestBodyLimits limits) {
            this.limits = limits;
        }

        @Override
        public void customize(TomcatServletWebServerFactory factory) {
            factory.addEngineValves(new RequestBodyValve(limits));
        }
    }
}
