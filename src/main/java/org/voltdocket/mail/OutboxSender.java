package org.voltdocket.mail;

import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.MailException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.mail.javamail.MimeMessageHelper;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Sends due messages. Each message is locked, sent and marked as sent in one transaction, so that no two nodes send the same
 * message. After a crash between sending and marking it is sent again with the same Message-ID.
 */
@Component
class OutboxSender {

    /** About five days with the delays below. */
    static final int MOST_ATTEMPTS = 20;

    private static final Logger LOG = LoggerFactory.getLogger(OutboxSender.class);
    private static final Duration FIRST_WAIT = Duration.ofMinutes(1);
    private static final Duration LONGEST_WAIT = Duration.ofHours(8);
    private static final int MOST_ERROR = 500;

    private final JdbcClient db;
    private final ObjectProvider<JavaMailSender> sender;
    private final MailSettings settings;
    private final Clock clock;
    private final TransactionTemplate transaction;

    OutboxSender(
            JdbcClient db,
            ObjectProvider<JavaMailSender> sender,
            MailSettings settings,
            Clock clock,
            PlatformTransactionManager transactions) {
        this.db = db;
        this.sender = sender;
        this.settings = settings;
        this.clock = clock;
        this.transaction = new TransactionTemplate(transactions);
    }

    private record StoredMessage(
            UUID id, String recipient, String subject, String body, int attempts, Instant writtenAt) {}

    /** Sends all due messages and returns how many were sent. */
    int sendDue() {
        int sent = 0;
        for (Boolean one = next(); one != null; one = next()) {
            sent += one ? 1 : 0;
        }
        return sent;
    }

    /** Null if nothing is due; false if the mail server did not accept the message. */
    private Boolean next() {
        return transaction.execute(tx -> due().map(this::send).orElse(null));
    }

    private Optional<StoredMessage> due() {
        return db.sql("select id, recipient, subject, body, attempts, written_at from mail_outbox where sent_at is null"
                        + " and failed_at is null and next_at <= ? order by next_at, ordinal limit 1"
                        + " for update skip locked")
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .query((row, n) -> new StoredMessage(
                        row.getObject("id", UUID.class),
                        row.getString("recipient"),
                        row.getString("subject"),
                        row.getString("body"),
                        row.getInt("attempts"),
                        row.getTimestamp("written_at").toInstant()))
                .optional();
    }

    private boolean send(StoredMessage message) {
        try {
            JavaMailSender server = sender.getObject();
            server.send(mimeMessage(server, message));
            db.sql("update mail_outbox set sent_at = ?, recipient = null, attempts = attempts + 1, last_error = null"
                            + " where id = ?")
                    .param(clock.instant().atOffset(ZoneOffset.UTC))
                    .param(message.id())
                    .update();
            return true;
        } catch (MailException | MessagingException e) {
            later(message, e);
            return false;
        }
    }

    private MimeMessage mimeMessage(JavaMailSender server, StoredMessage stored) throws MessagingException {
        String domain = settings.from().replaceAll("^.*@", "").replaceAll("[^A-Za-z0-9.-].*$", "");
        MimeMessage message = new MimeMessage(server.createMimeMessage().getSession()) {
            @Override
            protected void updateMessageID() throws MessagingException {
                setHeader("Message-ID", "<" + stored.id() + "@" + domain + ">");
            }
        };
        MimeMessageHelper helper = new MimeMessageHelper(message, StandardCharsets.UTF_8.name());
        helper.setFrom(settings.from());
        helper.setTo(stored.recipient());
        helper.setSubject(stored.subject());
        helper.setText(stored.body());
        helper.setSentDate(Date.from(stored.writtenAt()));
        // suppresses automatic answers (RFC 3834)
        message.setHeader("Auto-Submitted", "auto-generated");
        return message;
    }

    private void later(StoredMessage message, Exception failure) {
        int attempts = message.attempts() + 1;
        boolean givenUp = attempts >= MOST_ATTEMPTS;
        Instant now = clock.instant();
        String reason = String.valueOf(failure.getMessage());
        db.sql("update mail_outbox set attempts = ?, next_at = ?, last_error = ?, failed_at = ? where id = ?")
                .param(attempts)
                .param(now.plus(wait(attempts)).atOffset(ZoneOffset.UTC))
                .param(reason.substring(0, Math.min(MOST_ERROR, reason.length())))
                .param(givenUp ? now.atOffset(ZoneOffset.UTC) : null)
                .param(message.id())
                .update();
        LOG.warn(
                "Message {} was not accepted by the mail server at attempt {}; it is {}: {}",
                message.id(),
                attempts,
                givenUp ? "given up" : "kept and tried again",
                failure.getClass().getSimpleName());
    }

    /** The delay before the next attempt: doubled each time, from one minute to eight hours. */
    static Duration wait(int attempts) {
        Duration wait = FIRST_WAIT.multipliedBy(1L << Math.min(attempts - 1, 20));
        return wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
    }
}
