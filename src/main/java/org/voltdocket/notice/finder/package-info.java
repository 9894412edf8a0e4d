/**
 * The finders of notices, one per pattern, and the statistics and image hashes they use.
 */
package org.voltdocket.notice.finder;
