/**
 * Who may come in: workshops, accounts, roles, sessions and tokens. Makes the {@code Actor} every controller takes.
 *
 * <p>Offers {@link org.voltdocket.access.AccountService} (workshops and accounts), {@link org.voltdocket.access.TokenService}
 * (keys for scripts) and {@link org.voltdocket.access.AccountPrincipal} (the principal). Inside, {@code web} holds the filter
 * chains, the sign-in page, the account pages and the argument resolver that hands an
 * {@link org.voltdocket.kernel.Actor} to any controller that names one as a parameter. Imports {@code kernel} only;
 * errors travel as Spring's own exceptions and are rendered by {@code ui}. Start reading at
 * {@link org.voltdocket.access.AccountService}.
 */
package org.voltdocket.access;
