package org.voltdocket.access.rows;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/**
 * Gives each connection the rows of the request that takes it: all rows for the distributor's people and for background work, the
 * rows of one workshop for its people, none before sign-in. PostgreSQL enforces it, so that a query without a condition on the
 * workshop shows nothing of another one.
 *
 * <p>A new connection starts with the role {@code voltdocket_staff} (see {@code connection-init-sql} in application.yml). The role
 * is only set again if it differs from the one that the connection had last, so that most requests send nothing more.
 */
class RowAccessDataSource extends DelegatingDataSource {

    private final Map<PGConnection, RowScope> scopes = Collections.synchronizedMap(new WeakHashMap<>());

    RowAccessDataSource(DataSource target) {
        super(target);
    }

    @Override
    public Connection getConnection() throws SQLException {
        Connection connection = super.getConnection();
        try {
            // outside of any transaction, so that a rollback does not take it back
            give(connection, RowScope.current());
            return connection;
        } catch (SQLException | RuntimeException e) {
            connection.close();
            throw e;
        }
    }

    private void give(Connection connection, RowScope scope) throws SQLException {
        PGConnection session = connection.unwrap(PGConnection.class);
        if (scope.equals(scopes.getOrDefault(session, RowScope.ALL))) {
            return;
        }
        try (Statement statement = connection.createStatement()) {
            statement.execute(scope.sql());
        }
        scopes.put(session, scope);
    }
}
