/**
 * What makes the rooms one server: the demo's database and accounts, the first administrator, the line that says it is
 * ready, and the trail of account changes.
 *
 * <p>Offers nothing to other rooms. May import {@code kernel}, {@code access} and {@code trail}. Start reading at
 * {@code EmbeddedDatabase} for the demo's data directory, at {@code FirstAdministrator} for real use.
 */
package org.voltdocket.server;
