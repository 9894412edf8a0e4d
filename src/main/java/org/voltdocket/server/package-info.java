/**
 * Start-up, health and administration of the server: the first administrator, checks of settings with plain messages,
 * verification of trail and evidence from the command line, the state of the server, log and metrics, the licences.
 *
 * <p>No other package of the server imports it. Start reading at {@code FirstAdministrator} and {@code ServerStatusReader}.
 */
package org.voltdocket.server;
