package org.voltdocket.mail;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;

/** Lets one thread send: at once when something was written, and every half minute for what is due again. */
@Component
class MailWorker implements SmartLifecycle {

    private static final Logger LOG = LoggerFactory.getLogger(MailWorker.class);
    private static final long EVERY_S = 30;

    private final ObjectProvider<OutboxSender> run;
    private final MailSettings settings;
    private volatile ScheduledExecutorService thread;

    MailWorker(ObjectProvider<OutboxSender> run, MailSettings settings) {
        this.run = run;
        this.settings = settings;
    }

    @Override
    public void start() {
        if (!settings.isOn()) {
            return;
        }
        thread = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread made = new Thread(work, "mail");
            made.setDaemon(true);
            return made;
        });
        thread.scheduleWithFixedDelay(this::send, EVERY_S, EVERY_S, TimeUnit.SECONDS);
    }

    /** Sends soon, on its own thread. */
    void now() {
        ScheduledExecutorService running = thread;
        if (running != null && !running.isShutdown()) {
            running.execute(this::send);
        }
    }

    private void send() {
        try {
            run.getObject().sendDue();
        } catch (RuntimeException e) {
            LOG.warn("Mail could not be sent now; it is kept and tried again.", e);
        }
    }

    @Override
    public void stop() {
        ScheduledExecutorService running = thread;
        if (running == null) {
            return;
        }
        running.shutdown();
        try {
            running.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        thread = null;
    }

    @Override
    public boolean isRunning() {
        return thread != null;
    }
}
