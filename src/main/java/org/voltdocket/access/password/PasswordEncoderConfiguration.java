package org.voltdocket.access.password;

import java.util.Map;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * How passwords are hashed: Argon2id (RFC 9106) with 19 MiB, two passes and one lane, the smallest parameters that the OWASP
 * Password Storage Cheat Sheet recommends. Hashes by BCrypt are accepted and replaced at the next sign-in.
 */
@Configuration(proxyBeanMethods = false)
class PasswordEncoderConfiguration {

    private static final int SALT_BYTES = 16;
    private static final int HASH_BYTES = 32;
    private static final int LANES = 1;
    private static final int MEMORY_KIB = 19 * 1024;
    private static final int PASSES = 2;

    @Bean
    PasswordEncoder passwordEncoder() {
        PasswordEncoder argon2 = new Argon2PasswordEncoder(SALT_BYTES, HASH_BYTES, LANES, MEMORY_KIB, PASSES);
        return new BoundedPasswordEncoder(new DelegatingPasswordEncoder(
                "argon2id", Map.of("argon2id", argon2, "bcrypt", new BCryptPasswordEncoder())));
    }
}
