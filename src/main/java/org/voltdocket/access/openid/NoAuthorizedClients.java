package org.voltdocket.access.openid;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.security.core.Authentication;
import org.springframework.security.oauth2.client.OAuth2AuthorizedClient;
import org.springframework.security.oauth2.client.web.OAuth2AuthorizedClientRepository;

/** Forgets the tokens of the provider: after the sign-in this server needs nothing more from it. */
class NoAuthorizedClients implements OAuth2AuthorizedClientRepository {

    @Override
    public <T extends OAuth2AuthorizedClient> T loadAuthorizedClient(
            String registration, Authentication who, HttpServletRequest request) {
        return null;
    }

    @Override
    public void saveAuthorizedClient(
            OAuth2AuthorizedClient client,
            Authentication who,
            HttpServletRequest request,
            HttpServletResponse response) {
        // not needed
    }

    @Override
    public void removeAuthorizedClient(
            String registration, Authentication who, HttpServletRequest request, HttpServletResponse response) {
        // none
    }
}
