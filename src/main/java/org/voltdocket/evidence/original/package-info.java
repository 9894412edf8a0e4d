/**
 * Stores the original files byte for byte, in the database or in an object store by the S3 protocol, and verifies their digests.
 *
 * <p>Start reading at {@link org.voltdocket.evidence.original.OriginalFileStore}.
 */
package org.voltdocket.evidence.original;
