package org.voltdocket.demo;

import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.NewAccount;
import org.voltdocket.access.WorkshopSummary;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;

/** Creates the demo's invented workshops and its accounts, one per role, all with the same public password. */
@Component
@Profile("demo")
@Order(Ordered.HIGHEST_PRECEDENCE)
class DemoAccounts implements ApplicationRunner {

    static final String PASSWORD = "voltdocket-demo";

    private static final Logger LOG = LoggerFactory.getLogger(DemoAccounts.class);

    private final AccountService accounts;

    DemoAccounts(AccountService accounts) {
        this.accounts = accounts;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        make("workshop", Role.WORKSHOP, Optional.of("Lantern Yard Garage (invented)"));
        make("workshop2", Role.WORKSHOP, Optional.of("Copper Quay Workshop (invented)"));
        make("clerk", Role.CLERK, Optional.empty());
        make("auditor", Role.AUDITOR, Optional.empty());
        make("admin", Role.ADMIN, Optional.empty());
    }

    @EventListener
    void on(ApplicationReadyEvent event) {
        LOG.info(
                "This is the demo, all of it invented. Sign in as workshop, workshop2, clerk, auditor or admin; the"
                        + " password of each is {}.",
                PASSWORD);
    }

    private void make(String name, Role role, Optional<String> workshop) {
        if (accounts.find(name).isEmpty()) {
            accounts.createUser(Actor.system(), new NewAccount(name, PASSWORD, role, workshop.map(this::workshop)));
        }
    }

    private UUID workshop(String name) {
        return accounts.workshops().stream()
                .filter(known -> known.name().equals(name))
                .findFirst()
                .map(WorkshopSummary::id)
                .orElseGet(() -> accounts.createWorkshop(Actor.system(), name).id());
    }
}
