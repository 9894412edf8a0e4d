package org.voltdocket.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

@ServerTest
class LastAdministratorTest {

    @Autowired
    private Server server;

    @Autowired
    private AccountService accounts;

    @Test
    void administratorsWhoDisableEachOtherAtTheSameTimeLeaveOne() throws Exception {
        server.newUser(Role.ADMIN);
        server.newUser(Role.ADMIN);
        List<UUID> all = enabledAdministrators();
        ExecutorService threads = Executors.newFixedThreadPool(all.size());
        try {
            List<Callable<Boolean>> calls =
                    all.stream().<Callable<Boolean>>map(id -> () -> disable(id)).toList();
            int disabled = 0;
            for (Future<Boolean> one : threads.invokeAll(calls)) {
                disabled += one.get() ? 1 : 0;
            }
            assertThat(enabledAdministrators()).hasSize(1);
            assertThat(disabled).isEqualTo(all.size() - 1);
        } finally {
            threads.shutdown();
            all.forEach(id -> accounts.setEnabled(Actor.system(), id, true));
        }
    }

    private boolean disable(UUID id) {
        try {
            accounts.setEnabled(Actor.system(), id, false);
            return true;
        } catch (RuntimeException lastOne) {
            assertThat(lastOne).hasMessageContaining("last administrator");
            return false;
        }
    }

    private List<UUID> enabledAdministrators() {
        return accounts.accounts(Actor.system()).stream()
                .filter(one -> one.role() == Role.ADMIN && one.enabled())
                .map(AccountSummary::id)
                .toList();
    }
}
