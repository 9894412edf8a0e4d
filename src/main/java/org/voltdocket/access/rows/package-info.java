/**
 * Row-level security: which rows of the database a connection sees. Start reading at {@code RowAccessDataSource}; a service that
 * has to read other workshops' rows for a workshop carries {@link org.voltdocket.access.rows.SeesAllRows}.
 */
package org.voltdocket.access.rows;
