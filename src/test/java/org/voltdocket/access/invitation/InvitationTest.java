package org.voltdocket.access.invitation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

@ServerTest
class InvitationTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private JdbcClient db;

    private final String name = "invited-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void theOwnerSetsAPasswordByTheLinkOnce() {
        Client admin = server.browser(server.user(Role.ADMIN));
        Answer made = admin.postForm("/accounts", Map.of("name", name, "role", "AUDITOR", "of", "", "email", mail()));
        String link = link(made);
        assertThat(made.text()).contains("https://voltdocket.example" + link).doesNotContain("??");
        assertThat(admin.get("/accounts").text()).as("shown once").doesNotContain(link);
        assertThat(db.sql("select count(*) from mail_outbox where body like ?")
                        .param("%https://voltdocket.example" + link + "%")
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        assertThat(signIn()).as("no password yet").contains("error");

        Client owner = server.anonymous();
        assertThat(owner.get(link).text()).contains(name, "minlength=\"15\"").doesNotContain("??");
        assertThat(owner.get(link).header("referrer-policy")).hasValue("no-referrer");
        Answer weak = owner.postForm(link, Map.of("password", "too short"));
        assertThat(weak.status()).isEqualTo(400);
        assertThat(weak.text()).contains("too short", "aria-invalid=\"true\"");
        Answer set = owner.postForm(link, Map.of("password", Server.PASSWORD));
        assertThat(set.header("location").orElse("")).endsWith("/sign-in?set");
        assertThat(signIn()).doesNotContain("sign-in");
        assertThat(owner.get(link).status()).as("used").isEqualTo(404);
        assertThat(owner.postForm(link, Map.of("password", "another set of words"))
                        .status())
                .isEqualTo(404);
    }

    @Test
    void aNewInvitationEndsThePasswordTheSessionsAndTheEarlierLink() {
        Server.User user = server.newUser(Role.CLERK);
        Client theirs = server.browser(user);
        String id = accounts.find(user.name()).orElseThrow().id().toString();
        Client admin = server.browser(server.user(Role.ADMIN));
        String first = link(admin.postForm("/accounts/" + id + "/invitation", Map.of()));
        assertThat(theirs.get("/account").status()).isEqualTo(302);
        assertThat(server.as(user).get("/api/v1/cases").status()).isEqualTo(401);
        String second = link(admin.postForm("/accounts/" + id + "/invitation", Map.of()));
        assertThat(server.anonymous().get(first).status()).isEqualTo(404);
        assertThat(server.anonymous().get(second).status()).isEqualTo(200);
    }

    @Test
    void anExpiredLinkAndOneOfADisabledAccountInviteNobody() {
        Client admin = server.browser(server.user(Role.ADMIN));
        String link = link(admin.postForm("/accounts", Map.of("name", name, "role", "CLERK", "of", "")));
        UUID id = accounts.find(name).orElseThrow().id();
        accounts.setEnabled(org.voltdocket.kernel.Actor.system(), id, false);
        assertThat(server.anonymous().get(link).status()).isEqualTo(404);
        accounts.setEnabled(org.voltdocket.kernel.Actor.system(), id, true);
        assertThat(server.anonymous().get(link).status()).isEqualTo(200);
        String secret = link.substring(link.lastIndexOf('/') + 1);
        db.sql("update invitation set created_at = now() - interval '8 days', expires_at = now() - interval '1 day'"
                        + " where digest = ?")
                .param(Sha256.of(secret.getBytes()).hex())
                .update();
        assertThat(server.anonymous().get(link).status()).isEqualTo(404);
    }

    private String mail() {
        return name + "@workshop.example";
    }

    private String signIn() {
        return server.anonymous()
                .postForm("/sign-in", Map.of("username", name, "password", Server.PASSWORD))
                .header("location")
                .orElse("");
    }

    private static String link(Answer page) {
        Matcher link = Pattern.compile("(/invitation/[\\w-]{43})<").matcher(page.text());
        assertThat(link.find()).as(page.toString()).isTrue();
        return link.group(1);
    }
}
