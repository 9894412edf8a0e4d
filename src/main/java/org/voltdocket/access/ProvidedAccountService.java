package org.voltdocket.access;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;

/** Creates and updates the accounts that an OpenID provider signs in. */
@Service
public class ProvidedAccountService {

    private final AccountService accounts;
    private final AccountRepository rows;
    private final WorkshopRepository workshops;
    private final ApplicationEventPublisher events;

    ProvidedAccountService(
            AccountService accounts,
            AccountRepository rows,
            WorkshopRepository workshops,
            ApplicationEventPublisher events) {
        this.accounts = accounts;
        this.rows = rows;
        this.workshops = workshops;
        this.events = events;
    }

    /**
     * Finds the account of a person, creates it at the first sign-in, and gives it the role and workshop of the provider.
     *
     * @throws RequestException 400 with the field {@code name} where another account has the name, {@code workshop} where there
     *     is no such workshop, or {@code enabled} where the account is disabled here
     */
    @Transactional
    public AccountPrincipal signIn(ProvidedAccount wanted) {
        Optional<AccountEntity> known = rows.findByIssuerAndIssuedName(wanted.issuer(), wanted.subject());
        AccountEntity row = known.orElseGet(() -> create(wanted));
        if (!row.enabled()) {
            throw RequestException.invalid("account-refused", "enabled", "This account is disabled on this server.");
        }
        if (known.isPresent()) {
            update(row, wanted);
        }
        return row.signedIn();
    }

    private AccountEntity create(ProvidedAccount wanted) {
        Optional<UUID> workshop = workshop(wanted).map(one -> one.ref().id());
        NewAccount account = new NewAccount(wanted.name(), null, wanted.role(), workshop);
        AccountEntity row =
                rows.findById(accounts.createUser(Actor.system(), account).id()).orElseThrow();
        row.setIdentity(wanted.issuer(), wanted.subject());
        return row;
    }

    private void update(AccountEntity row, ProvidedAccount wanted) {
        List<AccountEntity> administrators = rows.findByRoleAndEnabledTrueOrderById(Role.ADMIN);
        Role before = row.role();
        if (before == Role.ADMIN && wanted.role() != Role.ADMIN && administrators.size() < 2) {
            return; // the last administrator stays one
        }
        if (row.assign(wanted.role(), workshop(wanted).orElse(null))) {
            Map<String, Object> details = new LinkedHashMap<>();
            details.put(
                    "account.role",
                    Map.of("old", before.name(), "new", wanted.role().name()));
            row.ref().workshop().ifPresent(one -> details.put("account.workshop", one.name()));
            events.publishEvent(new AccountChangedEvent(Actor.system(), "account-assigned", row.name(), details));
        }
    }

    private Optional<WorkshopEntity> workshop(ProvidedAccount wanted) {
        if (wanted.role() != Role.WORKSHOP) {
            return Optional.empty();
        }
        return Optional.of(workshops
                .findByNameIgnoreCase(wanted.workshop().strip())
                .orElseThrow(
                        () -> RequestException.invalid("account-refused", "workshop", "There is no such workshop.")));
    }
}
