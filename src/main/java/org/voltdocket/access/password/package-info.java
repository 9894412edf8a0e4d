/**
 * What a password must be, and how it is hashed.
 *
 * <p>Start reading at {@link org.voltdocket.access.password.PasswordHasher}.
 */
package org.voltdocket.access.password;
