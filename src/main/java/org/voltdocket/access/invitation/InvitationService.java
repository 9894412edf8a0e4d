package org.voltdocket.access.invitation;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.AccountSummary;
import org.voltdocket.access.NewAccount;
import org.voltdocket.access.password.HashedPassword;
import org.voltdocket.access.signin.SignInSettings;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/** Invites people by a link that expires and works once. Only the digest of its secret, 256 random bits, is stored. */
@Service
public class InvitationService {

    private static final SecureRandom RANDOM = new SecureRandom();

    private final InvitationRepository invitations;
    private final AccountService accounts;
    private final SignInSettings settings;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    InvitationService(
            InvitationRepository invitations,
            AccountService accounts,
            SignInSettings settings,
            ApplicationEventPublisher events,
            Clock clock) {
        this.invitations = invitations;
        this.accounts = accounts;
        this.settings = settings;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Makes an account without a password and invites its owner.
     *
     * @throws RequestException as {@link AccountService#createUser}
     */
    @Transactional
    public Invitation invite(Actor actor, NewAccount wanted) {
        return invite(actor, accounts.createUser(actor, wanted));
    }

    /**
     * Takes away the password of an account, ends its sessions and tokens, and invites its owner to set a new one. An earlier
     * link works no longer.
     *
     * @throws RequestException where there is no such account, or a provider signs it in
     */
    @Transactional
    public Invitation inviteAgain(Actor actor, UUID account) {
        return invite(actor, accounts.resetPassword(actor, account));
    }

    private Invitation invite(Actor actor, AccountSummary account) {
        Instant now = clock.instant();
        invitations.findByAccountIdAndEndedAtIsNull(account.id()).forEach(earlier -> earlier.end(now));
        byte[] bytes = new byte[32];
        RANDOM.nextBytes(bytes);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Instant end = now.plus(settings.invitation());
        invitations.saveAndFlush(new InvitationEntity(account.id(), digest(secret), now, end));
        Invitation made = new Invitation(account.name(), "/invitation/" + secret, end);
        events.publishEvent(new InvitationCreatedEvent(made.account(), made.path(), end));
        events.publishEvent(new AccountChangedEvent(
                actor, "account-invited", account.name(), Map.of("account.expires", end.toString())));
        return made;
    }

    /** Whom a link invites; empty where it is unknown, used or expired, or the account disabled. */
    @Transactional(readOnly = true)
    public Optional<AccountPrincipal> invited(String secret) {
        return invitations
                .findByDigest(digest(secret))
                .filter(row -> row.isOpen(clock.instant()))
                .flatMap(row -> accounts.principal(row.accountId()));
    }

    /**
     * Sets the password and ends the invitation.
     *
     * @throws RequestException 404 where the link was used meanwhile or has expired
     */
    @Transactional
    public void accept(String secret, HashedPassword password) {
        InvitationEntity row = invitations
                .findLockedByDigest(digest(secret))
                .filter(one -> one.isOpen(clock.instant()))
                .orElseThrow(InvitationService::gone);
        row.end(clock.instant());
        accounts.setPassword(row.accountId(), password);
    }

    /** The refusal of a link that invites nobody. */
    public static RequestException gone() {
        return RequestException.of(
                404,
                "invitation-gone",
                "This link was used or has expired. Ask the distributor's administrator for a new one.");
    }

    private static String digest(String secret) {
        return Sha256.of(secret.getBytes(StandardCharsets.UTF_8)).hex();
    }
}
