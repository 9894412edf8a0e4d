package org.voltdocket.access.signin;

import java.util.List;

/**
 * A sign-in that administrators should know of. Published in the transaction that records it.
 *
 * @param account name of the account
 * @param reasons {@code new-network}, {@code many-failures} or {@code recovery-code}
 */
public record UnusualSignInEvent(String account, String address, SignInMethod method, List<String> reasons) {}
