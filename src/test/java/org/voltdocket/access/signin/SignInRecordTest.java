package org.voltdocket.access.signin;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.PasswordVerifier;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

@ServerTest
class SignInRecordTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private PasswordVerifier passwords;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Trail trail;

    @Test
    void everySignInIsInTheTrailWithItsAddress() {
        User user = server.newUser(Role.CLERK);
        signIn(user.name(), "a wrong guess");
        signIn(user.name(), Server.PASSWORD);
        List<TrailEntry> entries = trail.of("account/" + user.name());
        assertThat(entries).extracting(TrailEntry::act).endsWith("sign-in-failed", "signed-in");
        TrailEntry last = entries.get(entries.size() - 1);
        assertThat(last.details().toString()).contains("127.0.0.1", "PASSWORD");
        assertThat(last.actor().user()).isEqualTo(user.name());
        String page = server.browser(server.user(Role.ADMIN))
                .get("/accounts/sign-ins")
                .text();
        assertThat(page).contains(user.name(), "signed in", "failed").doesNotContain("??");
    }

    @Test
    void aNameThatNobodyHasIsNotKept() {
        String typed = "password-in-the-wrong-field-" + UUID.randomUUID();
        signIn(typed, "x");
        assertThat(db.sql(
                                "select count(*) from trail_entry where subject like '%wrong-field%' or details like '%wrong-field%'")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(trail.of("account/(unknown)")).isNotEmpty();
    }

    @Test
    void aNewNetworkIsReportedToAdministrators() {
        User user = server.newUser(Role.CLERK);
        mailOfAdministrator();
        signIn(user.name(), Server.PASSWORD);
        assertThat(unusual(user)).as("the first sign-in is usual").isZero();
        db.sql("update sign_in set address = '198.51.100.7', network = '198.51.100.0/24' where account_id = ?")
                .param(accounts.find(user.name()).orElseThrow().id())
                .update();
        signIn(user.name(), Server.PASSWORD);
        assertThat(unusual(user)).isEqualTo(1);
        signIn(user.name(), Server.PASSWORD);
        assertThat(unusual(user)).as("known now").isEqualTo(1);
        assertThat(mails(user)).isEqualTo(1);
        String page = server.browser(server.user(Role.ADMIN))
                .get("/accounts/sign-ins?unusual=true")
                .text();
        assertThat(page).contains(user.name(), "from a new network");
    }

    @Test
    void aSuccessAfterManyFailuresIsReported() {
        User user = server.newUser(Role.WORKSHOP);
        mailOfAdministrator();
        for (int i = 0; i < SignInRecorder.MANY_FAILURES - 1; i++) {
            signIn(user.name(), "a wrong guess");
        }
        signIn(user.name(), Server.PASSWORD);
        assertThat(unusual(user)).isZero();
        for (int i = 0; i < SignInRecorder.MANY_FAILURES; i++) {
            signIn(user.name(), "a wrong guess");
        }
        signIn(user.name(), Server.PASSWORD);
        assertThat(unusual(user)).isEqualTo(1);
        assertThat(mails(user)).isEqualTo(1);
    }

    /** One administrator with an address, so that each report is one mail to it. */
    private void mailOfAdministrator() {
        db.sql("update account set email = null where role = 'ADMIN'").update();
        User admin = server.newUser(Role.ADMIN);
        accounts.setEmail(passwords.check(admin.name(), Server.PASSWORD).orElseThrow(), "watch@distributor.example");
    }

    private long unusual(User user) {
        return db.sql("select count(*) from sign_in where account_id = ? and cardinality(unusual) > 0")
                .param(accounts.find(user.name()).orElseThrow().id())
                .query(Long.class)
                .single();
    }

    private long mails(User user) {
        return db.sql("select count(*) from mail_outbox where subject = ?")
                .param("Unusual sign-in: " + user.name())
                .query(Long.class)
                .single();
    }

    private void signIn(String name, String password) {
        Client client = server.anonymous();
        client.postForm("/sign-in", Map.of("username", name, "password", password));
    }
}
