package org.voltdocket.server.command;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.trail.Trail;

/** Writes changes of accounts, workshops and tokens into the trail, in the transaction that makes them. */
@Component
class AccountTrail {

    private final Trail trail;

    AccountTrail(Trail trail) {
        this.trail = trail;
    }

    @EventListener
    void on(AccountChangedEvent change) {
        trail.record(change.actor(), change.act(), "account/" + change.subject(), change.details());
    }
}
