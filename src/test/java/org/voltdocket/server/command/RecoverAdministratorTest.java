package org.voltdocket.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** The command against the database of the running test server. */
@ServerTest
class RecoverAdministratorTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Autowired
    private Trail trail;

    @Test
    void aDisabledAdministratorSignsInAgain() {
        User admin = server.newUser(Role.ADMIN);
        accounts.setEnabled(
                Actor.system(), accounts.find(admin.name()).orElseThrow().id(), false);
        String said = run(admin.name(), 0);
        assertThat(said).contains(admin.name());
        assertThat(trail.of("account/" + admin.name()))
                .extracting(TrailEntry::act)
                .endsWith("account-enabled", "password-reset", "administrator-recovered");
        assertThat(signIn(admin.name())).isEqualTo(201);
    }

    @Test
    void aNewAdministratorIsCreated() {
        String name = "recovered-" + UUID.randomUUID().toString().substring(0, 8);
        run(name, 0);
        assertThat(signIn(name)).isEqualTo(201);
        assertThat(accounts.find(name).orElseThrow().role()).isEqualTo(Role.ADMIN);
    }

    @Test
    void anotherRoleIsRefusedAndKeepsItsPassword() {
        User clerk = server.newUser(Role.CLERK);
        assertThat(run(clerk.name(), 1)).contains("Nothing was changed", "is not an administrator");
        assertThat(signIn(clerk.name())).isEqualTo(401);
    }

    private int signIn(String name) {
        return server.anonymous()
                .basic(name, "recovered by a command")
                .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                .status();
    }

    private static String run(String name, int expected) {
        TestDatabase database = TestDatabase.shared();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = RecoverAdministrator.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                "--recover-administrator=" + name,
                "--voltdocket.admin.password=recovered by a command",
                "--spring.datasource.url=" + database.getJdbcUrl(),
                "--spring.datasource.username=" + database.getUsername(),
                "--spring.datasource.password=" + database.getPassword());
        String text = out.toString(StandardCharsets.UTF_8);
        assertThat(code).as(text).isEqualTo(expected);
        return text;
    }
}
