package org.voltdocket.access.openid;

import org.springframework.security.oauth2.core.oidc.user.DefaultOidcUser;
import org.springframework.security.oauth2.core.oidc.user.OidcUser;
import org.voltdocket.access.AccountPrincipal;

/** A person whom the provider signed in, with the account on this server. */
class OpenIdUser extends DefaultOidcUser {

    private static final long serialVersionUID = 1L;

    private final AccountPrincipal account;

    OpenIdUser(OidcUser user, AccountPrincipal account) {
        super(user.getAuthorities(), user.getIdToken(), user.getUserInfo());
        this.account = account;
    }

    AccountPrincipal account() {
        return account;
    }

    @Override
    public String getName() {
        return account.actor().user();
    }
}
