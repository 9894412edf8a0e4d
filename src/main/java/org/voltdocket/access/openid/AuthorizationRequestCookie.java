package org.voltdocket.access.openid;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.security.oauth2.client.registration.ClientRegistration;
import org.springframework.security.oauth2.client.registration.ClientRegistrationRepository;
import org.springframework.security.oauth2.client.web.AuthorizationRequestRepository;
import org.springframework.security.oauth2.core.endpoint.OAuth2AuthorizationRequest;
import org.springframework.security.oauth2.core.endpoint.OAuth2ParameterNames;
import org.springframework.security.oauth2.core.endpoint.PkceParameterNames;
import org.springframework.security.oauth2.core.oidc.endpoint.OidcParameterNames;
import org.voltdocket.access.signin.SealedCookie;

/** Keeps what is needed to verify the provider's answer in a sealed cookie, so that anonymous requests store nothing here. */
class AuthorizationRequestCookie implements AuthorizationRequestRepository<OAuth2AuthorizationRequest> {

    private final SealedCookie cookie;
    private final ClientRegistrationRepository registrations;

    AuthorizationRequestCookie(SealedCookie cookie, ClientRegistrationRepository registrations) {
        this.cookie = cookie;
        this.registrations = registrations;
    }

    @Override
    public OAuth2AuthorizationRequest loadAuthorizationRequest(HttpServletRequest request) {
        return cookie.read(request)
                .map(this::parse)
                .filter(saved -> saved.getState().equals(request.getParameter(OAuth2ParameterNames.STATE)))
                .orElse(null);
    }

    @Override
    public void saveAuthorizationRequest(
            OAuth2AuthorizationRequest saved, HttpServletRequest request, HttpServletResponse response) {
        if (saved == null) {
            cookie.remove(request, response);
            return;
        }
        Map<String, Object> attributes = saved.getAttributes();
        cookie.write(
                String.join(
                        "\n",
                        saved.getState(),
                        saved.getRedirectUri(),
                        (String) attributes.get(OidcParameterNames.NONCE),
                        (String) attributes.get(PkceParameterNames.CODE_VERIFIER)),
                request,
                response);
    }

    @Override
    public OAuth2AuthorizationRequest removeAuthorizationRequest(
            HttpServletRequest request, HttpServletResponse response) {
        OAuth2AuthorizationRequest saved = loadAuthorizationRequest(request);
        cookie.remove(request, response);
        return saved;
    }

    private OAuth2AuthorizationRequest parse(String text) {
        String[] lines = text.split("\n");
        ClientRegistration registration = registrations.findByRegistrationId(OpenIdSignIn.REGISTRATION);
        return OAuth2AuthorizationRequest.authorizationCode()
                .authorizationUri(registration.getProviderDetails().getAuthorizationUri())
                .clientId(registration.getClientId())
                .scopes(registration.getScopes())
                .state(lines[0])
                .redirectUri(lines[1])
                .attributes(all -> {
                    all.put(OAuth2ParameterNames.REGISTRATION_ID, OpenIdSignIn.REGISTRATION);
                    all.put(OidcParameterNames.NONCE, lines[2]);
                    all.put(PkceParameterNames.CODE_VERIFIER, lines[3]);
                })
                .build();
    }
}
