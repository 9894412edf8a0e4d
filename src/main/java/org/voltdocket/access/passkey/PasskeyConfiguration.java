package org.voltdocket.access.passkey;

import java.net.URI;
import java.util.Set;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.security.web.webauthn.api.AuthenticatorSelectionCriteria;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRpEntity;
import org.springframework.security.web.webauthn.api.ResidentKeyRequirement;
import org.springframework.security.web.webauthn.api.UserVerificationRequirement;
import org.springframework.security.web.webauthn.management.JdbcPublicKeyCredentialUserEntityRepository;
import org.springframework.security.web.webauthn.management.PublicKeyCredentialUserEntityRepository;
import org.springframework.security.web.webauthn.management.Webauthn4JRelyingPartyOperations;

/** Passkeys belong to the host of {@code voltdocket.address}, and verify their user by PIN, finger or face. */
@Configuration(proxyBeanMethods = false)
class PasskeyConfiguration {

    @Bean
    PublicKeyCredentialUserEntityRepository passkeyUsers(JdbcOperations jdbc) {
        return new JdbcPublicKeyCredentialUserEntityRepository(jdbc);
    }

    @Bean
    Webauthn4JRelyingPartyOperations relyingParty(
            PublicKeyCredentialUserEntityRepository users,
            PasskeyRepository passkeys,
            @Value("${voltdocket.address:http://localhost:${server.port:8080}}") String address) {
        URI uri = URI.create(address.replaceAll("/+$", ""));
        String origin = uri.getScheme() + "://" + uri.getAuthority();
        PublicKeyCredentialRpEntity server = PublicKeyCredentialRpEntity.builder()
                .id(uri.getHost())
                .name("Voltdocket")
                .build();
        Webauthn4JRelyingPartyOperations operations =
                new Webauthn4JRelyingPartyOperations(users, passkeys, server, Set.of(origin));
        operations.setCustomizeCreationOptions(
                options -> options.authenticatorSelection(AuthenticatorSelectionCriteria.builder()
                        .residentKey(ResidentKeyRequirement.REQUIRED)
                        .userVerification(UserVerificationRequirement.REQUIRED)
                        .build()));
        operations.setCustomizeRequestOptions(
                options -> options.userVerification(UserVerificationRequirement.REQUIRED));
        return operations;
    }
}
