/**
 * Limits for the size and the duration of request bodies, enforced before a request is read; the reserve of free disk space; and the
 * connection pool for reading.
 *
 * <p>Start reading at {@code RequestBodyValve}.
 */
package org.voltdocket.server.limits;
