/**
 * Sign-in by name, password and code, and the sessions that every sign-in starts.
 *
 * <p>Start reading at {@link org.voltdocket.access.session.PasswordAuthenticationProvider} and
 * {@link org.voltdocket.access.session.SignInSession}.
 */
package org.voltdocket.access.session;
