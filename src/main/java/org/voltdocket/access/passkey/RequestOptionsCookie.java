package org.voltdocket.access.passkey;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Duration;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRequestOptions;
import org.springframework.security.web.webauthn.api.UserVerificationRequirement;
import org.springframework.security.web.webauthn.authentication.PublicKeyCredentialRequestOptionsRepository;
import org.voltdocket.access.signin.SealedCookie;

/** Keeps the challenge of a sign-in in a sealed cookie, so that anonymous requests store nothing on the server. */
class RequestOptionsCookie implements PublicKeyCredentialRequestOptionsRepository {

    /** As long as a browser waits for the user. */
    static final Duration LIFETIME = Duration.ofMinutes(5);

    private final SealedCookie cookie;
    private final String server;

    /** @param server id of the relying party */
    RequestOptionsCookie(SealedCookie cookie, String server) {
        this.cookie = cookie;
        this.server = server;
    }

    @Override
    public void save(
            HttpServletRequest request, HttpServletResponse response, PublicKeyCredentialRequestOptions options) {
        if (options == null) {
            cookie.remove(request, response);
        } else {
            cookie.write(options.getChallenge().toBase64UrlString(), request, response);
        }
    }

    @Override
    public PublicKeyCredentialRequestOptions load(HttpServletRequest request) {
        return cookie.read(request)
                .map(challenge -> PublicKeyCredentialRequestOptions.builder()
                        .challenge(Bytes.fromBase64(challenge))
                        .rpId(server)
                        .timeout(LIFETIME)
                        .userVerification(UserVerificationRequirement.REQUIRED)
                        .build())
                .orElse(null);
    }
}
