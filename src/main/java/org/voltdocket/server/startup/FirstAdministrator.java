package org.voltdocket.server.startup;

import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.NewAccount;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;

/** Creates the first administrator from the environment. Ignores the variables once there is an administrator. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
public class FirstAdministrator implements ApplicationRunner {

    private static final Logger LOG = LoggerFactory.getLogger(FirstAdministrator.class);

    private final AccountService accounts;
    private final String user;
    private final String password;

    FirstAdministrator(
            AccountService accounts,
            @Value("${voltdocket.admin.user:}") String user,
            @Value("${voltdocket.admin.password:}") String password) {
        this.accounts = accounts;
        this.user = user;
        this.password = password;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (accounts.hasAdministrator()) {
            return;
        }
        if (user.isBlank() || password.isBlank()) {
            throw new StartupException(
                    "There is no administrator yet, and nobody could sign in.",
                    "Set VOLTDOCKET_ADMIN_USER and VOLTDOCKET_ADMIN_PASSWORD (15 characters or more) and start again. "
                            + "They are read once: as soon as there is an administrator, remove them.");
        }
        try {
            accounts.createUser(Actor.system(), new NewAccount(user, password, Role.ADMIN, Optional.empty()));
        } catch (RequestException e) {
            throw new StartupException(
                    "The first administrator cannot be made: " + e.getMessage(),
                    "Change VOLTDOCKET_ADMIN_USER or VOLTDOCKET_ADMIN_PASSWORD and start again.");
        }
        LOG.info("Made the first administrator, {}. Remove VOLTDOCKET_ADMIN_PASSWORD from the environment now.", user);
    }
}
