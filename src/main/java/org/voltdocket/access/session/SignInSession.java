package org.voltdocket.access.session;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Duration;
import java.util.UUID;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.stereotype.Component;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.signin.SealedCookie;
import org.voltdocket.access.signin.ServerSecret;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInSettings;
import org.voltdocket.access.signin.SignedIn;

/**
 * What happens at every sign-in that starts a session: it is recorded, the session notes where it comes from, sessions beyond
 * the limit end, and the device gets a cookie by which it is known.
 */
@Component
public class SignInSession implements SessionAuthenticationStrategy {

    /** Session attribute of an account that is asked to set up a second factor. */
    public static final String ASK_SECOND_FACTOR = "askSecondFactor";

    private static final Duration DEVICE_KNOWN = Duration.ofDays(180);

    private final SignInRecorder recorder;
    private final AccountSessions sessions;
    private final AccountFactors factors;
    private final SignInSettings settings;
    private final SealedCookie device;

    SignInSession(
            SignInRecorder recorder,
            AccountSessions sessions,
            AccountFactors factors,
            SignInSettings settings,
            ServerSecret secret) {
        this.factors = factors;
        this.settings = settings;
        this.recorder = recorder;
        this.sessions = sessions;
        this.device = new SealedCookie(secret, "voltdocket-device", DEVICE_KNOWN);
    }

    @Override
    public void onAuthentication(Authentication who, HttpServletRequest request, HttpServletResponse response) {
        if (!(who.getDetails() instanceof SignedIn how) || !(who.getPrincipal() instanceof AccountPrincipal account)) {
            throw new IllegalStateException("a session is for an account that has signed in");
        }
        recorder.succeeded(account, request.getRemoteAddr(), how.method(), how.earlierFailures());
        sessions.makeRoom(who.getName());
        HttpSession session = request.getSession(true);
        sessions.note(session, request.getRemoteAddr(), request.getHeader(HttpHeaders.USER_AGENT));
        if (how.method() == SignInMethod.PASSWORD
                && settings.askSecondFactor().contains(account.actor().role())
                && !factors.hasAny(account)) {
            session.setAttribute(ASK_SECOND_FACTOR, true);
        }
        String known = knownDevice(request);
        if (!known.startsWith(who.getName() + "\n")) {
            device.write(who.getName() + "\n" + UUID.randomUUID(), request, response);
        }
    }

    /** Name and mark of the device that asks; blank where it is not known. */
    public String knownDevice(HttpServletRequest request) {
        return device.read(request).orElse("");
    }
}
