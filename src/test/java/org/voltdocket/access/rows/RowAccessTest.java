package org.voltdocket.access.rows;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;

/** What the database itself allows the server, whatever its code asks for. */
@ServerTest
class RowAccessTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private CaseService cases;

    @Test
    void aQueryWithoutAnyConditionShowsOneWorkshopOnly() {
        Server.User own = server.newUser(Role.WORKSHOP);
        Server.User other = server.newUser(Role.WORKSHOP);
        String vin = Pairs.vin();
        String first = open(own, vin);
        String second = open(other, vin);
        assertThat(as(own, this::numbers)).containsExactly(first);
        assertThat(as(other, this::numbers)).containsExactly(second);
        assertThat(as(server.user(Role.CLERK), this::numbers)).contains(first, second);
        assertThat(numbers()).as("background work").contains(first, second);
        assertThat(as(
                        own,
                        () -> db.sql("select number from case_summary")
                                .query(String.class)
                                .list()))
                .as("a view has the rights of who reads it")
                .containsExactly(first);
    }

    @Test
    void aRequestBeforeSignInSeesNoCase() {
        open(server.newUser(Role.WORKSHOP), Pairs.vin());
        RequestContextHolder.setRequestAttributes(new ServletRequestAttributes(new MockHttpServletRequest()));
        try {
            assertThat(numbers()).isEmpty();
        } finally {
            RequestContextHolder.resetRequestAttributes();
        }
    }

    @Test
    void aWorkshopChangesNoRowOfAnother() {
        Server.User own = server.newUser(Role.WORKSHOP);
        Server.User other = server.newUser(Role.WORKSHOP);
        String number = open(own, Pairs.vin());
        String change = "update case_file set complaint = 'other' where number = '" + number + "'";
        assertThat(as(other, () -> db.sql(change).update())).isZero();
        assertThat(as(own, () -> db.sql(change).update())).isOne();
    }

    /** The history of a vehicle counts all cases; afterwards the transaction sees its workshop again. */
    @Test
    void aMethodThatSeesAllRowsDoesSoForItsTimeOnly() {
        Server.User own = server.newUser(Role.WORKSHOP);
        String vin = Pairs.vin();
        String number = open(own, vin);
        open(server.newUser(Role.WORKSHOP), vin);
        List<String> seen = as(
                own,
                () -> transaction.execute(status -> {
                    java.util.UUID id = db.sql("select id from case_file where number = ?")
                            .param(number)
                            .query(java.util.UUID.class)
                            .single();
                    assertThat(cases.siblings(id)).hasSize(1);
                    return numbers();
                }));
        assertThat(seen).containsExactly(number);
    }

    @Test
    void theServersRoleHasNoRightsOfItsOwn() throws SQLException {
        TestDatabase database = TestDatabase.shared();
        try (Connection connection = DriverManager.getConnection(
                        database.getJdbcUrl(), database.getUsername(), database.getPassword());
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeQuery("select 1 from case_file"))
                    .hasMessageContaining("permission denied");
            assertThatThrownBy(() -> statement.execute("create table intruder (id integer)"))
                    .hasMessageContaining("permission denied");
            statement.execute("set role voltdocket_staff");
            assertThatThrownBy(() -> statement.execute("alter table trail_entry disable trigger all"))
                    .hasMessageContaining("must be owner");
        }
    }

    @Test
    void appendOnlyTablesCanOnlyBeAppendedTo() throws SQLException {
        TreeSet<String> tables = new TreeSet<>(db.sql("select tgrelid::regclass::text from pg_trigger where tgfoid ="
                        + " 'refuse_change'::regproc and tgname like '%\\_append\\_only'")
                .query(String.class)
                .list());
        assertThat(tables)
                .contains(
                        "trail_entry",
                        "evidence",
                        "raw_file",
                        "raw_chunk",
                        "assessment",
                        "claim_decision",
                        "claim_step");
        try (Connection owner = TestDatabase.shared().connectAsOwner("postgres");
                Statement statement = owner.createStatement()) {
            for (String table : tables) {
                for (String role : List.of("voltdocket_staff", "voltdocket_workshop")) {
                    try (ResultSet rights = statement.executeQuery("select has_table_privilege('" + role + "', '"
                            + table
                            + "', 'INSERT'), has_table_privilege('" + role + "', '" + table
                            + "', 'UPDATE, DELETE, TRUNCATE'), has_any_column_privilege('" + role + "', '" + table
                            + "', 'UPDATE')")) {
                        rights.next();
                        assertThat(rights.getBoolean(1)).as(table).isTrue();
                        assertThat(rights.getBoolean(2) || rights.getBoolean(3))
                                .as(role + " may change " + table)
                                .isFalse();
                    }
                }
                assertThatThrownBy(() -> statement.execute("truncate " + table + " cascade"))
                        .hasMessageContaining("append-only");
            }
        }
    }

    private String open(Server.User user, String vin) {
        Answer opened = server.as(user)
                .postJson("/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + vin + "\"}");
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return opened.json().get("number").stringValue();
    }

    private List<String> numbers() {
        return db.sql("select number from case_file").query(String.class).list();
    }

    private static <T> T as(Server.User user, Supplier<T> work) {
        AccountPrincipal who = new AccountPrincipal(java.util.UUID.randomUUID(), user.actor(), 0);
        SecurityContextHolder.getContext()
                .setAuthentication(new UsernamePasswordAuthenticationToken(who, null, List.of()));
        try {
            return work.get();
        } finally {
            SecurityContextHolder.clearContext();
        }
    }
}
