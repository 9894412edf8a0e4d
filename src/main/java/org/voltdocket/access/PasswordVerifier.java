package org.voltdocket.access;

import java.util.Optional;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Checks a name and a password. A hash of an older kind is replaced when the password is right. */
@Service
public class PasswordVerifier {

    private final AccountRepository accounts;
    private final PasswordEncoder encoder;
    private final String nobodysHash;

    PasswordVerifier(AccountRepository accounts, PasswordEncoder encoder) {
        this.accounts = accounts;
        this.encoder = encoder;
        this.nobodysHash = encoder.encode("nobody has this password");
    }

    /** Whose name and password these are; empty where they do not fit or the account is disabled, which is never said. */
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    public Optional<AccountPrincipal> check(String name, String password) {
        Optional<AccountEntity> row = accounts.findByName(AccountService.lowered(name));
        Optional<String> hash = row.flatMap(AccountEntity::passwordHash);
        String given = password == null ? "" : password;
        // the same work for an unknown name, so that the time taken does not tell names
        boolean fits = encoder.matches(given, hash.orElse(nobodysHash)) && hash.isPresent();
        if (fits && encoder.upgradeEncoding(hash.get())) {
            accounts.replaceHash(row.get().id(), hash.get(), encoder.encode(given));
        }
        return row.filter(account -> fits && account.enabled()).map(AccountEntity::signedIn);
    }
}
