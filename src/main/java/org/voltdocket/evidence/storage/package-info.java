/**
 * Stores evidence: items, original files (in the database or, where {@code voltdocket.raw.bucket} names one, in an object
 * store by the S3 protocol), readings and the columns of recordings. Start reading at {@code OriginalFileStore} for
 * original bytes and at {@code ReadingRepository} for what was read from them.
 */
package org.voltdocket.evidence.storage;
