package org.voltdocket.mail;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Stores messages in the transaction that causes them. They are sent after its commit, or not at all. */
@Service
public class Outbox {

    private final JdbcClient db;
    private final MailSettings settings;
    private final Clock clock;

    Outbox(JdbcClient db, MailSettings settings, Clock clock) {
        this.db = db;
        this.settings = settings;
        this.clock = clock;
    }

    /** Whether mail is sent. If not, nothing is stored either: it would all be sent on the day mail is turned on. */
    public boolean isOn() {
        return settings.isOn();
    }

    /** The address under which people reach the server, without a slash at the end, for links in messages. */
    public String address() {
        return settings.address();
    }

    /** Stores one message for each recipient. Does nothing if mail is off. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void write(Collection<String> recipients, String subject, String body) {
        if (!isOn() || recipients.isEmpty()) {
            return;
        }
        Instant now = clock.instant();
        for (String recipient : recipients) {
            db.sql(
                            "insert into mail_outbox (id, recipient, subject, body, written_at, next_at) values (?, ?, ?, ?, ?, ?)")
                    .param(UUID.randomUUID())
                    .param(recipient)
                    .param(subject)
                    .param(body)
                    .param(now.atOffset(ZoneOffset.UTC))
                    .param(now.atOffset(ZoneOffset.UTC))
                    .update();
        }
    }
}
