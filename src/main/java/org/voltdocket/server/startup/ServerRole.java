package org.voltdocket.server.startup;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/**
 * The role of the database that the server signs in as. It inherits nothing: without {@code set role} it sees no table.
 * Append-only tables cannot be changed by it, and no table can be changed in its form.
 */
final class ServerRole {

    private ServerRole() {}

    /**
     * Creates the role if it is missing, sets its password, and lets it take the roles {@code voltdocket_staff} and
     * {@code voltdocket_workshop}. If server and owner are one role, only the latter is done.
     *
     * @param owner connects as the owner of the tables, who may create roles
     * @throws StartupException if the database refuses it
     */
    static void prepare(DataSource owner, JdbcConnectionDetails server) {
        try (Connection connection = owner.getConnection();
                Statement statement = connection.createStatement()) {
            String user = server.getUsername();
            if (user != null && !user.equals(connection.getMetaData().getUserName())) {
                String password = server.getPassword();
                if (!exists(connection, user)) {
                    statement.execute("create role " + statement.enquoteIdentifier(user, true) + " login noinherit");
                }
                if (password != null && !password.isEmpty()) {
                    // the driver sends a verifier, never the password
                    connection
                            .unwrap(PGConnection.class)
                            .alterUserPassword(user, password.toCharArray(), "scram-sha-256");
                }
            }
            String member = user == null ? "current_user" : statement.enquoteIdentifier(user, true);
            statement.execute(
                    "grant voltdocket_staff, voltdocket_workshop to " + member + " with inherit false, set true");
        } catch (SQLException e) {
            throw new StartupException(
                    "The server's role of the database cannot be prepared: " + e.getMessage(),
                    "Let the owner named in SPRING_FLYWAY_USER create roles (alter role … createrole), see /manual/running.",
                    e);
        }
    }

    private static boolean exists(Connection connection, String role) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("select from pg_roles where rolname = ?")) {
            query.setString(1, role);
            try (ResultSet rows = query.executeQuery()) {
                return rows.next();
            }
        }
    }
}
