package org.voltdocket.access.rows;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import javax.sql.DataSource;
import org.aopalliance.intercept.MethodInterceptor;
import org.aopalliance.intercept.MethodInvocation;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.datasource.ConnectionHolder;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Runs a method that carries {@link SeesAllRows}, also in the middle of a transaction that sees one workshop. */
class SeesAllRowsInterceptor implements MethodInterceptor {

    private final ObjectProvider<DataSource> sources;

    SeesAllRowsInterceptor(ObjectProvider<DataSource> sources) {
        this.sources = sources;
    }

    @Override
    public Object invoke(MethodInvocation call) throws Throwable {
        RowScope before = RowScope.current();
        if (before.all()) {
            return call.proceed();
        }
        List<Connection> running = transactions();
        RowScope.enterAll();
        try {
            takeRole(running, "voltdocket_staff");
            return call.proceed();
        } finally {
            RowScope.leave();
            restore(running);
        }
    }

    /** The connections of the transaction around the call; none without one. */
    private List<Connection> transactions() {
        return sources.stream()
                .map(TransactionSynchronizationManager::getResource)
                .filter(ConnectionHolder.class::isInstance)
                .map(holder -> ((ConnectionHolder) holder).getConnection())
                .toList();
    }

    /** Until the end of the transaction, or until it is set again. */
    private static void takeRole(List<Connection> connections, String role) throws SQLException {
        for (Connection connection : connections) {
            try (Statement statement = connection.createStatement()) {
                statement.execute("set local role " + role);
            }
        }
    }

    private static void restore(List<Connection> running) {
        try {
            takeRole(running, "voltdocket_workshop");
        } catch (SQLException e) {
            // the transaction failed and will be rolled back, which restores the role
        }
    }
}
