package org.voltdocket.access.openid;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.springframework.security.oauth2.core.OAuth2AuthenticationException;
import org.springframework.security.oauth2.core.OAuth2Error;
import org.voltdocket.access.ProvidedAccount;
import org.voltdocket.kernel.Role;

/** Reads name, role and workshop of an account from the claims of a provider. */
final class OpenIdClaims {

    private OpenIdClaims() {}

    /** @throws OAuth2AuthenticationException with the code {@code no-name} or {@code no-role} where a claim is missing */
    static ProvidedAccount read(OpenIdSettings settings, Map<String, Object> claims) {
        String name = text(claims.get(settings.accountClaim()));
        if (name.isBlank()) {
            throw refused("no-name");
        }
        Role role = values(claims.get(settings.roleClaim())).stream()
                .map(value -> settings.roles().get(value))
                .filter(Objects::nonNull)
                .findFirst()
                .orElseThrow(() -> refused("no-role"));
        String workshop = role == Role.WORKSHOP ? text(claims.get(settings.workshopClaim())) : "";
        return new ProvidedAccount(text(claims.get("iss")), text(claims.get("sub")), name, role, workshop);
    }

    static OAuth2AuthenticationException refused(String code) {
        return new OAuth2AuthenticationException(new OAuth2Error(code));
    }

    private static List<String> values(Object claim) {
        return claim instanceof Collection<?> many
                ? many.stream().map(OpenIdClaims::text).toList()
                : List.of(text(claim));
    }

    private static String text(Object claim) {
        return claim == null ? "" : claim.toString();
    }
}
