package org.voltdocket.access;

import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.password.HashedPassword;
import org.voltdocket.access.password.PasswordHasher;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;

/** Workshops and accounts. What changes them is for {@link Role#ADMIN}, and told as an {@link AccountChangedEvent}. */
@Service
public class AccountService {

    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9._-]{1,39}");

    /** One local part and one domain, of letters, digits and what is common; the mail server has the last word. */
    private static final Pattern EMAIL = Pattern.compile(
            "[A-Za-z0-9._%+-]{1,64}@[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?(?:\\.[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?)*");

    private final WorkshopRepository workshops;
    private final AccountRepository accounts;
    private final PasswordHasher passwords;
    private final TokenRepository tokens;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    AccountService(
            WorkshopRepository workshops,
            AccountRepository accounts,
            PasswordHasher passwords,
            TokenRepository tokens,
            ApplicationEventPublisher events,
            Clock clock) {
        this.workshops = workshops;
        this.accounts = accounts;
        this.passwords = passwords;
        this.tokens = tokens;
        this.events = events;
        this.clock = clock;
    }

    /** The name people know a workshop by; empty where there is none of that key. */
    @Transactional(readOnly = true)
    public Optional<String> workshopName(UUID id) {
        return workshops.findById(id).map(row -> row.ref().name());
    }

    /** Every workshop, by name. */
    @Transactional(readOnly = true)
    public List<WorkshopSummary> workshops() {
        return workshops.findAllByOrderByName().stream()
                .map(WorkshopEntity::ref)
                .toList();
    }

    /** Every account, by name. */
    @Transactional(readOnly = true)
    public List<AccountSummary> accounts(Actor actor) {
        requireAdmin(actor);
        return accounts.findAllByOrderByName().stream().map(AccountEntity::ref).toList();
    }

    /** One account by its name, upper or lower case. */
    @Transactional(readOnly = true)
    public Optional<AccountSummary> find(String name) {
        return accounts.findByName(lowered(name)).map(AccountEntity::ref);
    }

    /** Whether anybody could administer the server. */
    @Transactional(readOnly = true)
    public boolean hasAdministrator() {
        return accounts.existsByRole(Role.ADMIN);
    }

    /**
     * Makes a workshop.
     *
     * @throws RequestException where the name is blank, longer than 120 characters or taken
     */
    @Transactional
    public WorkshopSummary createWorkshop(Actor actor, String name) {
        requireAdmin(actor);
        String trimmed = name == null ? "" : name.strip();
        if (trimmed.isEmpty() || trimmed.length() > 120) {
            throw RequestException.invalid(
                    "account-refused", "workshop", "A workshop needs a name of 1 to 120 characters.");
        }
        if (workshops.existsByNameIgnoreCase(trimmed)) {
            throw RequestException.invalid(
                    "account-refused", "workshop", "There is a workshop of that name already. Choose another name.");
        }
        WorkshopEntity row = new WorkshopEntity(UUID.randomUUID(), trimmed, clock.instant());
        workshops.saveAndFlush(row);
        events.publishEvent(new AccountChangedEvent(
                actor,
                "workshop-created",
                trimmed,
                Map.of("account.workshop", row.ref().id().toString())));
        return row.ref();
    }

    /**
     * Makes an account.
     *
     * @throws RequestException where the name is malformed or taken, the password too weak, the e-mail address malformed, or
     *     the workshop missing, unknown, or given for another role
     */
    @Transactional
    public AccountSummary createUser(Actor actor, NewAccount wanted) {
        requireAdmin(actor);
        String name = lowered(wanted.name());
        if (!NAME.matcher(name).matches() || name.equals(Actor.system().user())) {
            throw RequestException.invalid(
                    "account-refused",
                    "name",
                    "A sign-in name has 2 to 40 of the letters a-z, digits, dot, hyphen and underscore.");
        }
        if (accounts.findByName(name).isPresent()) {
            throw RequestException.invalid(
                    "account-refused", "name", "There is an account of that name already. Choose another name.");
        }
        if (wanted.role() == null) {
            throw RequestException.invalid("account-refused", "role", "Choose what the account may do.");
        }
        Optional<String> email = wanted.email().map(AccountService::checkedEmail);
        WorkshopEntity workshop = workshopFor(wanted.role(), wanted.workshop());
        AccountEntity row = new AccountEntity(UUID.randomUUID(), name, wanted.role(), workshop, clock.instant());
        if (wanted.password() != null) {
            row.setPassword(passwords.hash(wanted.password(), name));
        }
        email.ifPresent(row::setEmail);
        accounts.saveAndFlush(row);
        events.publishEvent(new AccountChangedEvent(actor, "account-created", name, made(row)));
        return row.ref();
    }

    private static Map<String, Object> made(AccountEntity row) {
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("account.role", row.role().name());
        row.ref().workshop().ifPresent(workshop -> details.put("account.workshop", workshop.name()));
        return details;
    }

    /**
     * Lets an account in or keeps it out; its sessions end and its tokens rest.
     *
     * @throws RequestException where that would leave no administrator
     */
    @Transactional
    public void setEnabled(Actor actor, UUID id, boolean enabled) {
        requireAdmin(actor);
        List<AccountEntity> administrators = accounts.findByRoleAndEnabledTrueOrderById(Role.ADMIN);
        AccountEntity row = require(id);
        if (row.enabled() == enabled) {
            return;
        }
        if (!enabled && row.role() == Role.ADMIN && administrators.size() < 2) {
            throw RequestException.invalid(
                    "account-refused", "name", "This is the last administrator. Create another one first.");
        }
        row.setEnabled(enabled);
        events.publishEvent(new AccountChangedEvent(
                actor,
                enabled ? "account-enabled" : "account-disabled",
                row.name(),
                Map.of("account.enabled", Map.of("old", !enabled, "new", enabled))));
    }

    /**
     * Gives the server an administrator who can sign in: enables the account and sets its password, or creates it.
     *
     * @throws RequestException where the account has another role, or the name or password is refused
     */
    @Transactional
    public void recoverAdministrator(String name, String password) {
        Actor system = Actor.system();
        Optional<AccountEntity> known = accounts.findByName(lowered(name));
        if (known.isEmpty()) {
            createUser(system, new NewAccount(name, password, Role.ADMIN, Optional.empty()));
        } else if (known.get().role() != Role.ADMIN) {
            throw RequestException.invalid(
                    "account-refused", "name", "The account " + lowered(name) + " is not an administrator.");
        } else {
            setEnabled(system, known.get().id(), true);
            known.get().setPassword(passwords.hash(password, lowered(name)));
            revokeTokens(known.get());
            events.publishEvent(new AccountChangedEvent(system, "password-reset", lowered(name), Map.of()));
        }
        events.publishEvent(new AccountChangedEvent(system, "administrator-recovered", lowered(name), Map.of()));
    }

    /**
     * Takes away somebody's password before a new invitation; the account's sessions and tokens end.
     *
     * @throws RequestException where a provider signs the account in
     */
    @Transactional
    public AccountSummary resetPassword(Actor actor, UUID id) {
        requireAdmin(actor);
        AccountEntity row = require(id);
        if (row.isOfProvider()) {
            throw RequestException.invalid(
                    "account-refused",
                    "name",
                    "The OpenID provider signs this account in. It has no password here; reset it at the provider.");
        }
        if (row.passwordHash().isPresent()) {
            row.setPassword(null);
            revokeTokens(row);
            events.publishEvent(new AccountChangedEvent(actor, "password-reset", row.name(), Map.of()));
        }
        return row.ref();
    }

    /**
     * Sets one's own password; every session of the account ends but the one that sets it, and every token.
     *
     * @return the principal to go on with
     */
    @Transactional
    public AccountPrincipal setPassword(UUID account, HashedPassword wanted) {
        AccountEntity row = require(account);
        row.setPassword(wanted);
        revokeTokens(row);
        AccountPrincipal who = row.signedIn();
        events.publishEvent(new AccountChangedEvent(who.actor(), "password-changed", row.name(), Map.of()));
        return who;
    }

    private void revokeTokens(AccountEntity row) {
        tokens.findByAccountIdOrderByCreatedAtDesc(row.id()).forEach(token -> token.revoke(clock.instant()));
    }

    /** The name of an account, for an administrator. */
    @Transactional(readOnly = true)
    public String name(Actor actor, UUID account) {
        requireAdmin(actor);
        return require(account).name();
    }

    /** Whether the account has a password of its own. */
    @Transactional(readOnly = true)
    public boolean hasPassword(UUID account) {
        return require(account).passwordHash().isPresent();
    }

    /** The principal of an account that may sign in, by its key. */
    @Transactional(readOnly = true)
    public Optional<AccountPrincipal> principal(UUID account) {
        return accounts.findById(account).filter(AccountEntity::enabled).map(AccountEntity::signedIn);
    }

    /** The principal of an account that may sign in, by its name. */
    @Transactional(readOnly = true)
    public Optional<AccountPrincipal> principal(String name) {
        return accounts.findByName(lowered(name)).filter(AccountEntity::enabled).map(AccountEntity::signedIn);
    }

    /** Where notices for this account go; empty where it set no address or may not sign in. */
    @Transactional(readOnly = true)
    public Optional<String> emailOf(String name) {
        return accounts.findByName(lowered(name)).filter(AccountEntity::enabled).flatMap(AccountEntity::email);
    }

    /** Addresses of a workshop's accounts that set one, without doubles. */
    @Transactional(readOnly = true)
    public List<String> emailsOf(UUID workshop) {
        return emails(accounts.findByWorkshopIdAndEnabledTrueAndEmailNotNullOrderByName(workshop));
    }

    /** Addresses of a role's accounts that set one, without doubles. */
    @Transactional(readOnly = true)
    public List<String> emailsOf(Role role) {
        return emails(accounts.findByRoleAndEnabledTrueAndEmailNotNullOrderByName(role));
    }

    private static List<String> emails(List<AccountEntity> rows) {
        return rows.stream().flatMap(row -> row.email().stream()).distinct().toList();
    }

    /**
     * Sets one's own address for notices, or takes it away.
     *
     * @param email null or blank takes it away
     * @throws RequestException where it is no address
     */
    @Transactional
    public void setEmail(AccountPrincipal who, String email) {
        String address = email == null || email.isBlank() ? null : checkedEmail(email);
        AccountEntity row = require(who.account());
        if (Optional.ofNullable(address).equals(row.email())) {
            return;
        }
        row.setEmail(address);
        // the trail is kept for good, so the address itself stays out of it
        events.publishEvent(new AccountChangedEvent(
                who.actor(), address == null ? "email-removed" : "email-set", row.name(), Map.of()));
    }

    private static String checkedEmail(String email) {
        String address = email.strip();
        if (address.length() > 254 || !EMAIL.matcher(address).matches()) {
            throw RequestException.invalid(
                    "account-refused", "email", "This is not an e-mail address. Enter one such as name@example.org.");
        }
        return address;
    }

    /** Whether the account is enabled and unchanged since the principal was made. */
    @Transactional(readOnly = true)
    public boolean isCurrent(AccountPrincipal who) {
        return accounts.findById(who.account())
                .filter(AccountEntity::enabled)
                .map(row -> row.signedIn().stamp() == who.stamp())
                .orElse(false);
    }

    private WorkshopEntity workshopFor(Role role, Optional<UUID> wanted) {
        boolean needed = role == Role.WORKSHOP;
        if (needed != wanted.isPresent()) {
            throw RequestException.invalid(
                    "account-refused",
                    "workshop",
                    needed ? "Choose the workshop of this account." : "Only a workshop account belongs to a workshop.");
        }
        return wanted.map(id -> workshops
                        .findById(id)
                        .orElseThrow(() ->
                                RequestException.invalid("account-refused", "workshop", "There is no such workshop.")))
                .orElse(null);
    }

    private AccountEntity require(UUID id) {
        return accounts.findById(id)
                .orElseThrow(() -> RequestException.invalid("account-refused", "name", "There is no such account."));
    }

    private static void requireAdmin(Actor actor) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("Only an administrator may see or change accounts.");
        }
    }

    static String lowered(String name) {
        return name == null ? "" : name.strip().toLowerCase(Locale.ROOT);
    }
}
