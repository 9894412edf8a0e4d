package org.voltdocket.access;

import java.util.Optional;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Checks a name and a password. */
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
    @Transactional(readOnly = true)
    public Optional<AccountPrincipal> check(String name, String password) {
        Optional<AccountEntity> row = accounts.findByName(AccountService.lowered(name));
        // the same work for an unknown name, so that the time taken does not tell names
        boolean fits = encoder.matches(
                password == null ? "" : password,
                row.map(AccountEntity::passwordHash).orElse(nobodysHash));
        return row.filter(account -> fits && account.enabled()).map(AccountEntity::signedIn);
    }
}
