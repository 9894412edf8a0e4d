package org.voltdocket.server;

import java.util.stream.Collectors;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.invitation.InvitationCreatedEvent;
import org.voltdocket.access.signin.SignInSettings;
import org.voltdocket.access.signin.UnusualSignInEvent;
import org.voltdocket.kernel.Role;
import org.voltdocket.mail.Outbox;
import org.voltdocket.ui.TextFormatter;

/** Mails invitations to their owners and unusual sign-ins to administrators, in the transaction that causes them. */
@Component
class AccessMailer {

    private final Outbox outbox;
    private final AccountService accounts;
    private final TextFormatter words;
    private final SignInSettings settings;

    AccessMailer(Outbox outbox, AccountService accounts, TextFormatter words, SignInSettings settings) {
        this.outbox = outbox;
        this.accounts = accounts;
        this.words = words;
        this.settings = settings;
    }

    @EventListener
    void on(InvitationCreatedEvent invitation) {
        if (outbox.isOn()) {
            outbox.write(
                    accounts.emailOf(invitation.account()).stream().toList(),
                    words.say("mail.invited.subject"),
                    words.say(
                            "mail.invited",
                            invitation.account(),
                            outbox.address() + invitation.path(),
                            words.moment(invitation.expiresAt())));
        }
    }

    @EventListener
    void on(UnusualSignInEvent unusual) {
        if (!outbox.isOn() || !settings.reportUnusual()) {
            return;
        }
        String reasons = unusual.reasons().stream()
                .map(reason -> words.say("sign-in-unusual." + reason))
                .collect(Collectors.joining(", "));
        outbox.write(
                accounts.emailsOf(Role.ADMIN),
                words.say("mail.unusual.subject", unusual.account()),
                words.say(
                        "mail.body",
                        words.say("mail.unusual", unusual.account(), unusual.address(), reasons),
                        outbox.address() + "/accounts/sign-ins?unusual=true"));
    }
}
