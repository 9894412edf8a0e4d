/**
 * The second factor of an account: time-based codes (RFC 6238) and recovery codes.
 *
 * <p>Start reading at {@link org.voltdocket.access.factor.SecondFactorService}.
 */
package org.voltdocket.access.factor;
