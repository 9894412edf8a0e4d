/**
 * The append-only record of what happened: who did what to which subject, chained by SHA-256.
 *
 * <p>Offers {@link org.voltdocket.trail.Trail}: record an act in the caller's transaction, read the entries of a
 * subject, verify the chain, also against a head that was noted outside the server. Its page and its API are in {@code
 * web}; {@code java -jar voltdocket.jar --verify-trail} does the same without a server. Imports {@code kernel} only. The table refuses UPDATE, DELETE and TRUNCATE; a change made
 * around that is found by {@code verify}. Start reading at {@link org.voltdocket.trail.Trail}.
 */
package org.voltdocket.trail;
