package org.voltdocket.access.signin;

import java.time.Instant;
import java.util.List;

/**
 * A sign-in as the administrators' list shows it.
 *
 * @param account its name; null where no account has the name that was typed
 * @param unusual why it is unusual; empty where it is not
 */
public record SignInEntry(
        Instant at, String account, String address, SignInMethod method, boolean succeeded, List<String> unusual) {}
