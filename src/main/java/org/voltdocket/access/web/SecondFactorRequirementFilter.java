package org.voltdocket.access.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Set;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.session.AccountFactors;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.Role;

/** Leads accounts whose role requires a second factor, and which have none, to the page where they set one up. */
class SecondFactorRequirementFilter extends OncePerRequestFilter {

    private final Set<Role> roles;
    private final AccountFactors factors;

    SecondFactorRequirementFilter(Set<Role> roles, AccountFactors factors) {
        this.roles = roles;
        this.factors = factors;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        if (isOpen(request.getRequestURI()) || who == null || !mustSetUp(who)) {
            chain.doFilter(request, response);
        } else {
            response.sendRedirect(request.getContextPath() + "/account/second-factor?required");
        }
    }

    /** A passkey and an OpenID provider are as good as a second factor. */
    private boolean mustSetUp(Authentication who) {
        return who.getPrincipal() instanceof AccountPrincipal account
                && roles.contains(account.actor().role())
                && !(who.getDetails() instanceof SignedIn how && how.method() == SignInMethod.OPENID)
                && !factors.hasAny(account);
    }

    private static boolean isOpen(String path) {
        return path.startsWith("/account/second-factor")
                || path.startsWith("/account/passkeys")
                || path.startsWith("/manual")
                || path.equals("/account")
                || path.equals("/sign-out")
                || path.equals("/error")
                || path.matches("/(css|js|img|webjars)/.*|/[^/]+\\.(css|svg|js|ico|json)");
    }
}
