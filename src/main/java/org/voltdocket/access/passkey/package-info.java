/**
 * Passkeys (Web Authentication) by Spring Security: registered on the account page, and used on the sign-in page.
 *
 * <p>Start reading at {@link org.voltdocket.access.passkey.PasskeySignIn}.
 */
package org.voltdocket.access.passkey;
