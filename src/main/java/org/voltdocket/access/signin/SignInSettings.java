package org.voltdocket.access.signin;

import java.time.Duration;
import java.util.Set;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.voltdocket.kernel.Role;

/**
 * Settings under {@code voltdocket.sign-in} in application.yml.
 *
 * @param secret Base64 of 32 random bytes that sign and encrypt cookies and the keys of second factors; blank uses one in the
 *     database
 * @param triesPerPair failed attempts for one account from one address before a wait
 * @param triesPerAccount the same for one account from all addresses
 * @param triesPerAddress the same for one address and all accounts
 * @param firstWait first wait; doubled with each further failure
 * @param longestWait longest wait
 * @param forgetAfter failures older than this count no more
 * @param invitation how long the link of an invitation works
 * @param reportUnusual whether administrators get mail about unusual sign-ins
 * @param keep how long the list of sign-ins goes back
 * @param askSecondFactor roles that are asked to set up a second factor
 * @param requireSecondFactor roles that cannot go on without one
 */
@ConfigurationProperties("voltdocket.sign-in")
public record SignInSettings(
        String secret,
        int triesPerPair,
        int triesPerAccount,
        int triesPerAddress,
        Duration firstWait,
        Duration longestWait,
        Duration forgetAfter,
        Duration invitation,
        boolean reportUnusual,
        Duration keep,
        Set<Role> askSecondFactor,
        Set<Role> requireSecondFactor) {

    public SignInSettings {
        askSecondFactor = askSecondFactor == null ? Set.of() : Set.copyOf(askSecondFactor);
        requireSecondFactor = requireSecondFactor == null ? Set.of() : Set.copyOf(requireSecondFactor);
    }

    @Override
    public String toString() {
        return "SignInSettings";
    }
}
