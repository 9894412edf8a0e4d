/**
 * Stores evidence: items, readings and the columns of recordings. Start reading at {@code ReadingRepository}.
 */
package org.voltdocket.evidence.storage;
