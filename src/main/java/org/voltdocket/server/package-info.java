/**
 * Start-up and operation of the server: the first administrator, limits for request bodies, request ids, metrics and health,
 * the page of the server's state, and the commands that verify the trail and the evidence or recover an administrator.
 *
 * <p>Offers nothing to other packages. Start reading at {@code FirstAdministrator} for the start and at
 * {@code RequestBodyValve} for the limits of requests.
 */
package org.voltdocket.server;
