/**
 * What holds for every way to sign in: throttling, the record of sign-ins, and the secret that signs and encrypts cookies.
 *
 * <p>Offers {@link org.voltdocket.access.signin.SignInThrottle}, {@link org.voltdocket.access.signin.SignInRecorder} and
 * {@link org.voltdocket.access.signin.ServerSecret}. All state is in the database, so that it holds over several servers.
 */
package org.voltdocket.access.signin;
