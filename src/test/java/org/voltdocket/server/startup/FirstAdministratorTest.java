package org.voltdocket.server.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

@ServerTest
class FirstAdministratorTest {

    @Autowired
    private AccountService accounts;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    @Test
    void theServerStartsWithTheOneNamedInItsEnvironment() {
        assertThat(accounts.find(Server.FIRST_ADMIN).orElseThrow().role()).isEqualTo(Role.ADMIN);
    }

    @Test
    void onceThereIsOneTheVariablesAreNotLookedAt() {
        assertThatCode(() -> new FirstAdministrator(accounts, "late-admin", "twelve letters or more").run(null))
                .doesNotThrowAnyException();
        assertThat(accounts.find("late-admin")).isEmpty();
        assertThatCode(() -> new FirstAdministrator(accounts, "", "").run(null)).doesNotThrowAnyException();
    }

    @Test
    void withoutAnAdministratorItIsMadeOrTheStartIsRefused() {
        transaction.executeWithoutResult(status -> {
            status.setRollbackOnly();
            jdbc.sql("update account set role = 'AUDITOR' where role = 'ADMIN'").update();
            assertThat(accounts.hasAdministrator()).isFalse();
            assertThatThrownBy(() -> new FirstAdministrator(accounts, "", "").run(null))
                    .isInstanceOf(StartupException.class)
                    .satisfies(e -> {
                        FailureAnalysis said = new StartupFailureAnalyzer().analyze(e);
                        assertThat(said.getDescription()).contains("no administrator");
                        assertThat(said.getAction()).contains("VOLTDOCKET_ADMIN_USER", "VOLTDOCKET_ADMIN_PASSWORD");
                    });
            new FirstAdministrator(accounts, "root-of-all", "twelve letters or more").run(null);
            assertThat(accounts.find("root-of-all").orElseThrow().role()).isEqualTo(Role.ADMIN);
        });
        transaction.executeWithoutResult(status -> {
            status.setRollbackOnly();
            jdbc.sql("update account set role = 'AUDITOR' where role = 'ADMIN'").update();
            assertThatThrownBy(() -> new FirstAdministrator(accounts, "root-of-all", "elevenchars").run(null))
                    .isInstanceOf(StartupException.class)
                    .hasMessageContaining("too short");
        });
    }
}
