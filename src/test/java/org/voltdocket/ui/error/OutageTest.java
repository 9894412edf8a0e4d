package org.voltdocket.ui.error;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.voltdocket.support.TestDatabase;

/** An outage is told from a mistake by what the system or the database says. */
class OutageTest {

    /** Codes of PostgreSQL's manual, appendix A; from memory. */
    @ParameterizedTest
    @CsvSource({
        "08006, DATABASE",
        "08001, DATABASE",
        "57P01, DATABASE",
        "57P03, DATABASE",
        "53300, DATABASE",
        "53100, DISK"
    })
    void byTheCodeOfTheDatabase(String state, Outage outage) {
        RuntimeException wrapped = new RuntimeException(new IllegalStateException(new SQLException("x", state)));
        assertThat(Outage.behind(wrapped)).contains(outage);
    }

    @ParameterizedTest
    @CsvSource({"23505", "22001", "42P01"})
    void whatIsNoOutageIsNone(String state) {
        assertThat(Outage.behind(new RuntimeException(new SQLException("x", state))))
                .isEmpty();
        assertThat(Outage.behind(new RuntimeException("no space left on device")))
                .isEmpty();
    }

    @Test
    void noConnectionInTimeIsOne() {
        assertThat(Outage.behind(new RuntimeException(new SQLTransientConnectionException("timed out"))))
                .contains(Outage.DATABASE);
    }

    @Test
    void aPoolInUseIsAnotherThanADatabaseThatIsAway() throws SQLException {
        TestDatabase database = TestDatabase.shared();
        try (HikariDataSource pool = pool(database.getJdbcUrl(), database);
                Connection held = pool.getConnection()) {
            assertThat(held.isValid(1)).isTrue();
            assertThat(Outage.behind(catchThrowable(pool::getConnection))).contains(Outage.BUSY);
        }
        try (HikariDataSource away = pool("jdbc:postgresql://127.0.0.1:1/none", database)) {
            assertThat(Outage.behind(catchThrowable(away::getConnection))).contains(Outage.DATABASE);
        }
    }

    private static HikariDataSource pool(String url, TestDatabase database) {
        HikariConfig config = new HikariConfig();
        config.setJdbcUrl(url);
        config.setUsername(database.getUsername());
        config.setPassword(database.getPassword());
        config.setMaximumPoolSize(1);
        config.setConnectionTimeout(250);
        config.setInitializationFailTimeout(-1);
        return new HikariDataSource(config);
    }

    /** The kernel's own device that is always full. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void aFullDiskIsOne() {
        Throwable full = catchThrowable(() -> {
            try (OutputStream out = Files.newOutputStream(Path.of("/dev/full"))) {
                out.write(1);
            }
        });
        assertThat(Outage.behind(new IllegalStateException(full))).isEqualTo(Optional.of(Outage.DISK));
    }
}
