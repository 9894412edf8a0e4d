package org.voltdocket.access.session;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/** What the sign-in form tells beside name and password. */
public class SignInDetails extends WebAuthenticationDetails {

    private static final long serialVersionUID = 1L;

    /** Name of an account and mark of a device that signed in to it before. */
    private final String device;

    public SignInDetails(HttpServletRequest request, String device) {
        super(request);
        this.device = device;
    }

    /** The mark of the device where it belongs to the account; blank otherwise. */
    String device(String account) {
        return device.startsWith(account + "\n") ? device.substring(account.length() + 1) : "";
    }
}
