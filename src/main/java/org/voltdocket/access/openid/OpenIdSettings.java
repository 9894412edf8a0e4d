package org.voltdocket.access.openid;

import java.util.List;
import java.util.Map;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.voltdocket.kernel.Role;

/**
 * Settings under {@code voltdocket.openid} in application.yml.
 *
 * @param issuer address of the provider; blank turns it off
 * @param clientId of this server at the provider
 * @param clientSecret of this server at the provider
 * @param name of the provider on the sign-in page
 * @param scopes that are asked for; {@code openid} is one of them
 * @param accountClaim claim with the name of the account
 * @param roleClaim claim with one or several values that name a role
 * @param roles the role for each value; the first value that is listed counts
 * @param workshopClaim claim with the name of the workshop, for the role {@code WORKSHOP}
 */
@ConfigurationProperties("voltdocket.openid")
public record OpenIdSettings(
        String issuer,
        String clientId,
        String clientSecret,
        String name,
        List<String> scopes,
        String accountClaim,
        String roleClaim,
        Map<String, Role> roles,
        String workshopClaim) {

    /** Whether a provider is named. */
    public boolean isOn() {
        return issuer != null && !issuer.isBlank();
    }

    @Override
    public String toString() {
        return "OpenIdSettings[" + issuer + "]";
    }
}
