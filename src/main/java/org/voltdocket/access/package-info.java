/**
 * Who may come in: workshops, accounts, roles, sessions and tokens. Makes the {@code Actor} every controller takes.
 *
 * <p>Offers {@link org.voltdocket.access.AccountService} (workshops and accounts), {@link org.voltdocket.access.TokenService}
 * (keys for scripts) and {@link org.voltdocket.access.AccountPrincipal} (the principal). Subpackages: {@code password} (rules
 * and hashing), {@code signin} (throttling and the record of sign-ins), {@code factor} (codes of an authenticator app),
 * {@code passkey}, {@code openid}, {@code invitation}, {@code session} (the form and sessions), and {@code web} with filter chains and pages. Imports {@code kernel}
 * only; events are written to the trail and mailed by {@code server}. Start reading at
 * {@link org.voltdocket.access.AccountService}.
 */
package org.voltdocket.access;
