package org.voltdocket.access.signin;

import java.io.Serializable;
import java.util.List;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.voltdocket.access.AccountPrincipal;

/**
 * How an account signed in: the details of its authentication.
 *
 * @param earlierFailures attempts that failed before
 */
public record SignedIn(SignInMethod method, int earlierFailures) implements Serializable {

    /** The authentication of an account, without how it signed in: for tokens. */
    public static UsernamePasswordAuthenticationToken authentication(AccountPrincipal who) {
        return UsernamePasswordAuthenticationToken.authenticated(
                who,
                null,
                List.of(new SimpleGrantedAuthority("ROLE_" + who.actor().role())));
    }

    /** The authentication of an account that signs in. */
    public static Authentication authentication(AccountPrincipal who, SignInMethod method, int earlierFailures) {
        UsernamePasswordAuthenticationToken made = authentication(who);
        made.setDetails(new SignedIn(method, earlierFailures));
        return made;
    }
}
