package org.voltdocket.access.passkey;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.CredentialRecord;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialUserEntity;
import org.springframework.security.web.webauthn.management.PublicKeyCredentialUserEntityRepository;
import org.springframework.stereotype.Service;
import org.voltdocket.access.AccountPrincipal;

/** The passkeys of an account. */
@Service
public class PasskeyService {

    private final PasskeyRepository passkeys;
    private final PublicKeyCredentialUserEntityRepository users;

    PasskeyService(PasskeyRepository passkeys, PublicKeyCredentialUserEntityRepository users) {
        this.passkeys = passkeys;
        this.users = users;
    }

    /**
     * A passkey as its owner sees it.
     *
     * @param id in base64url
     * @param label what its owner called it
     */
    public record Entry(String id, String label, Instant createdAt, Instant usedAt) {}

    public List<Entry> of(String account) {
        return records(account).stream()
                .map(one -> new Entry(
                        one.getCredentialId().toBase64UrlString(), one.getLabel(), one.getCreated(), one.getLastUsed()))
                .toList();
    }

    /** Removes a passkey; false where the account has none of that id. */
    public boolean remove(AccountPrincipal who, String id) {
        Optional<CredentialRecord> own = records(who.actor().user()).stream()
                .filter(one -> one.getCredentialId().toBase64UrlString().equals(id))
                .findFirst();
        own.ifPresent(one -> passkeys.delete(one.getCredentialId()));
        return own.isPresent();
    }

    /** Removes all passkeys of an account. */
    public void removeAll(String account) {
        records(account).forEach(one -> passkeys.delete(one.getCredentialId()));
    }

    private List<CredentialRecord> records(String account) {
        PublicKeyCredentialUserEntity user = users.findByUsername(account);
        Bytes id = user == null ? null : user.getId();
        return id == null ? List.of() : passkeys.findByUserId(id);
    }
}
