package org.voltdocket.access.signin;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Somebody who tries to sign in.
 *
 * @param account the name as typed; in lower case
 * @param address of the client
 * @param device a device that signed in to this account before, by its cookie; blank for any other
 */
public record SignInAttempt(String account, String address, String device) {

    public SignInAttempt {
        account = account.strip().toLowerCase(Locale.ROOT);
    }

    /** What failures are counted for. A known device has a count of its own, so that strangers cannot keep its owner out. */
    Map<SignInThrottle.Kind, String> subjects() {
        Map<SignInThrottle.Kind, String> subjects = new LinkedHashMap<>();
        subjects.put(SignInThrottle.Kind.PAIR, account + "\n" + address);
        if (device.isBlank()) {
            subjects.put(SignInThrottle.Kind.ACCOUNT, account);
        } else {
            subjects.put(SignInThrottle.Kind.DEVICE, account + "\n" + device);
        }
        subjects.put(SignInThrottle.Kind.ADDRESS, ClientNetwork.ofThrottle(address));
        return subjects;
    }
}
