/**
 * The demo's embedded PostgreSQL and its data directory. Start reading at {@code EmbeddedDatabase}. The verifications of
 * trail and evidence scan this package, so it holds nothing else.
 */
package org.voltdocket.demo.database;
