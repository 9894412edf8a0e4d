/**
 * Checks before the first request: settings, database, temporary directory, first administrator.
 *
 * <p>A failure analyzer explains each expected failure in one sentence. Start reading at {@code FirstAdministrator}.
 */
package org.voltdocket.server.startup;
