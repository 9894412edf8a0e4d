package org.voltdocket.mail;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Notices by e-mail against a real SMTP server in this process (GreenMail): sent after the step, kept while it is away. */
@ServerTest
class MailTest {

    @Autowired
    private Server server;

    @Autowired
    private GreenMail smtp;

    @Autowired
    private JavaMailSenderImpl sender;

    @Autowired
    private OutboxSender run;

    @Autowired
    private Outbox outbox;

    @Autowired
    private JdbcClient db;

    @Autowired
    private PlatformTransactionManager transactions;

    private Server.User owner;
    private Server.User reader;
    private SentCase sent;

    @BeforeEach
    void claimInReviewOfPeopleWithAddresses() {
        owner = server.newUser(Role.WORKSHOP);
        reader = server.newUser(Role.CLERK);
        address(owner, owner.name() + "@workshop.example");
        address(reader, reader.name() + "@distributor.example");
        sent = SentCase.open(server.as(owner));
        server.as(owner).postJson(sent.api() + "/claim", "{\"amount\":\"129.90\",\"currency\":\"EUR\"}");
        step(owner, "submit", "{}");
        step(reader, "take", "{}");
    }

    private void address(Server.User user, String email) {
        Answer kept = server.browser(user).postForm("/account/email", Map.of("email", email));
        assertThat(kept.status()).as(kept.toString()).isEqualTo(302);
    }

    private void step(Server.User user, String action, String body) {
        Client client = server.as(user);
        Answer answer = client.postJson(sent.api() + "/claim/" + action, body);
        assertThat(answer.status()).as(answer.toString()).isEqualTo(200);
    }

    private List<MimeMessage> to(Server.User user) {
        return Arrays.stream(smtp.getReceivedMessages())
                .filter(message -> recipient(message).startsWith(user.name() + "@"))
                .toList();
    }

    private static String recipient(MimeMessage message) {
        try {
            return message.getAllRecipients()[0].toString();
        } catch (jakarta.mail.MessagingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void await(BooleanSupplier done) {
        Instant end = Instant.now().plus(Duration.ofSeconds(30));
        while (!done.getAsBoolean()) {
            assertThat(Instant.now()).as("nothing came in 30 s").isBefore(end);
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    @Test
    void askingAnsweringAndDecidingTellWhoseTurnItIs() throws Exception {
        step(reader, "ask", "{\"items\":[\"charging-test\"],\"reason\":\"Loads on, please.\"}");
        await(() -> to(owner).size() == 1);
        MimeMessage asked = to(owner).get(0);
        assertThat(asked.getSubject()).isEqualTo("Case " + sent.number() + ": evidence requested");
        assertThat(asked.getFrom()[0]).hasToString("voltdocket@distributor.example");
        assertThat(asked.getHeader("Auto-Submitted")).containsExactly("auto-generated");
        String body = String.valueOf(asked.getContent()).replace("\r\n", "\n");
        assertThat(body).contains("https://voltdocket.example/cases/" + sent.number() + "\n");
        Answer told = server.as(owner).get(sent.api());
        for (String personal : List.of("batterySerial", "vin", "complaint", "openedBy")) {
            assertThat(body).doesNotContain(told.json().get(personal).stringValue());
        }
        assertThat(body).doesNotContain("Loads on", reader.name(), owner.name(), "129.90");

        step(owner, "answer", "{}");
        await(() -> to(reader).size() == 1);
        step(reader, "goodwill", "{\"reason\":\"A good customer.\"}");
        await(() -> to(owner).size() == 2);
        assertThat(to(owner).get(1).getSubject()).endsWith("claim decided");
        assertThat(outboxRows()).as("nobody's address stays").isZero();
    }

    private long outboxRows() {
        return db.sql("select count(*) from mail_outbox where recipient = ?")
                .param(owner.name() + "@workshop.example")
                .query(Long.class)
                .single();
    }

    @Test
    void whileTheMailServerIsAwayNothingIsLostAndNobodyWaits() {
        int port = sender.getPort();
        sender.setPort(free());
        try {
            long start = System.nanoTime();
            step(reader, "ask", "{\"items\":[\"charging-test\"]}");
            assertThat(Duration.ofNanos(System.nanoTime() - start))
                    .as("the step does not wait for mail")
                    .isLessThan(Duration.ofSeconds(20));
            await(() -> attempts() > 0);
            assertThat(outboxRows()).isOne();
        } finally {
            sender.setPort(port);
        }
        assertThat(next())
                .as("tried again in about a minute")
                .isAfter(Instant.now().plusSeconds(20));
        db.sql("update mail_outbox set next_at = now() where sent_at is null").update();
        run.sendDue();
        await(() -> to(owner).size() == 1);
        assertThat(outboxRows()).isZero();
    }

    /** A port where nobody listens. */
    private static int free() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int attempts() {
        return db.sql("select coalesce(max(attempts), 0) from mail_outbox where recipient = ?")
                .param(owner.name() + "@workshop.example")
                .query(Integer.class)
                .single();
    }

    private Instant next() {
        return db.sql("select next_at from mail_outbox where recipient = ?")
                .param(owner.name() + "@workshop.example")
                .query((row, n) -> row.getTimestamp(1).toInstant())
                .single();
    }

    @Test
    void whatIsRolledBackIsNotSent() {
        String to = UUID.randomUUID() + "@nobody.example";
        new TransactionTemplate(transactions).executeWithoutResult(tx -> {
            outbox.write(List.of(to), "never", "never");
            tx.setRollbackOnly();
        });
        run.sendDue();
        assertThat(Arrays.stream(smtp.getReceivedMessages()).map(MailTest::recipient))
                .doesNotContain(to);
    }

    @Test
    void waitsGrowToEightHours() {
        assertThat(OutboxSender.wait(1)).isEqualTo(Duration.ofMinutes(1));
        assertThat(OutboxSender.wait(2)).isEqualTo(Duration.ofMinutes(2));
        assertThat(OutboxSender.wait(9)).isEqualTo(Duration.ofMinutes(256));
        assertThat(OutboxSender.wait(10)).isEqualTo(Duration.ofHours(8));
        assertThat(OutboxSender.wait(OutboxSender.MOST_ATTEMPTS)).isEqualTo(Duration.ofHours(8));
    }

    @Test
    void anAddressIsOnesOwnAndCanBeTakenAway() {
        for (String wrong : List.of("no address", "a@b@c", "a@", "@b", "a b@c.example", "x@" + "y".repeat(260))) {
            assertThat(server.browser(owner)
                            .postForm("/account/email", Map.of("email", wrong))
                            .status())
                    .as(wrong)
                    .isEqualTo(400);
        }
        address(owner, "");
        step(reader, "ask", "{\"items\":[\"charging-test\"]}");
        run.sendDue();
        assertThat(to(owner)).isEmpty();
        assertThat(server.browser(owner).get("/account").text()).doesNotContain("@workshop.example");
        Optional<String> trail = db.sql("select string_agg(details, ' ') from trail_entry where subject = ?")
                .param("account/" + owner.name())
                .query(String.class)
                .optional();
        assertThat(trail.orElse("")).doesNotContain("@");
    }
}
