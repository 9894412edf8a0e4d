/**
 * Sign-in by an OpenID Connect provider, turned on by {@code voltdocket.openid.issuer}. Role and workshop come from claims.
 *
 * <p>Start reading at {@link org.voltdocket.access.openid.OpenIdSignIn}.
 */
package org.voltdocket.access.openid;
