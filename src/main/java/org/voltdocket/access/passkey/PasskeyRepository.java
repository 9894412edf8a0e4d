package org.voltdocket.access.passkey;

import java.util.List;
import java.util.Map;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.CredentialRecord;
import org.springframework.security.web.webauthn.management.JdbcUserCredentialRepository;
import org.springframework.security.web.webauthn.management.PublicKeyCredentialUserEntityRepository;
import org.springframework.security.web.webauthn.management.UserCredentialRepository;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountChangedEvent;
import org.voltdocket.access.AccountService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** Stores passkeys by the repository of Spring Security, and tells the trail of new and removed ones. */
@Repository
class PasskeyRepository implements UserCredentialRepository {

    static final int MOST_PER_ACCOUNT = 20;
    private static final int MOST_LABEL = 80;

    private final JdbcUserCredentialRepository stored;
    private final PublicKeyCredentialUserEntityRepository users;
    private final AccountService accounts;
    private final ApplicationEventPublisher events;

    PasskeyRepository(
            JdbcOperations jdbc,
            PublicKeyCredentialUserEntityRepository users,
            AccountService accounts,
            ApplicationEventPublisher events) {
        this.stored = new JdbcUserCredentialRepository(jdbc);
        this.users = users;
        this.accounts = accounts;
        this.events = events;
    }

    @Override
    @Transactional
    public void save(CredentialRecord passkey) {
        boolean added = stored.findByCredentialId(passkey.getCredentialId()) == null;
        if (added && passkey.getLabel().length() > MOST_LABEL) {
            throw RequestException.invalid(
                    "account-refused", "label", "A passkey has a name of up to " + MOST_LABEL + " characters.");
        }
        if (added && findByUserId(passkey.getUserEntityUserId()).size() >= MOST_PER_ACCOUNT) {
            throw RequestException.invalid(
                    "account-refused",
                    "label",
                    "An account has at most " + MOST_PER_ACCOUNT + " passkeys. Remove one first.");
        }
        stored.save(passkey);
        if (added) {
            publish("passkey-added", passkey);
        }
    }

    @Override
    @Transactional
    public void delete(Bytes id) {
        CredentialRecord passkey = stored.findByCredentialId(id);
        if (passkey != null) {
            stored.delete(id);
            publish("passkey-removed", passkey);
        }
    }

    @Override
    public CredentialRecord findByCredentialId(Bytes id) {
        return stored.findByCredentialId(id);
    }

    @Override
    public List<CredentialRecord> findByUserId(Bytes user) {
        return stored.findByUserId(user);
    }

    private void publish(String act, CredentialRecord passkey) {
        String name = users.findById(passkey.getUserEntityUserId()).getName();
        Actor actor = accounts.principal(name).map(who -> who.actor()).orElseGet(Actor::system);
        events.publishEvent(new AccountChangedEvent(actor, act, name, Map.of("account.passkey", passkey.getLabel())));
    }
}
