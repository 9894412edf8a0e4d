/**
 * Limits for the size and the duration of request bodies, enforced before a request is read.
 *
 * <p>Start reading at {@code RequestBodyValve}.
 */
package org.voltdocket.server.limits;
