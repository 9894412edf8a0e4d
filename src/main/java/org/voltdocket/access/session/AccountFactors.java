package org.voltdocket.access.session;

import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.passkey.PasskeyService;
import org.voltdocket.kernel.Actor;

/** Second factors and passkeys of accounts together. */
@Component
public class AccountFactors {

    private final AccountService accounts;
    private final SecondFactorService factors;
    private final PasskeyService passkeys;

    AccountFactors(AccountService accounts, SecondFactorService factors, PasskeyService passkeys) {
        this.accounts = accounts;
        this.factors = factors;
        this.passkeys = passkeys;
    }

    /** Whether the account has something stronger than a password. */
    public boolean hasAny(AccountPrincipal who) {
        return factors.isSetUp(who.account())
                || !passkeys.of(who.actor().user()).isEmpty();
    }

    public Set<UUID> accountsWithFactor() {
        return factors.accounts();
    }

    /** Removes the second factor and all passkeys of somebody who lost the phone. */
    @Transactional
    public void removeAll(Actor actor, UUID account) {
        String name = accounts.name(actor, account); // refuses everybody but an administrator
        factors.remove(actor, account, name);
        passkeys.removeAll(name);
    }
}
