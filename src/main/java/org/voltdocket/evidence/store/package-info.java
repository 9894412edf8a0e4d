/**
 * A store of original files outside the database, by the S3 protocol: off unless {@code voltdocket.raw.bucket} names one.
 *
 * <p>An object's name is the SHA-256 digest of its bytes, so that what is put twice is one object and what is read can be
 * checked without asking anybody. Knows no case and no database. Start reading at {@link
 * org.voltdocket.evidence.store.ObjectStore}; which objects belong to evidence says {@code evidence.RawStore}.
 */
package org.voltdocket.evidence.store;
