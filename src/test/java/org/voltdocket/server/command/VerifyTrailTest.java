package org.voltdocket.server.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Actor;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailHead;

/** The command against a copy of the trail in a database of its own, tampered with as an owner of the database could. */
@ServerTest
class VerifyTrailTest {

    @Autowired
    private Trail trail;

    private final String name = "trail_copy_" + UUID.randomUUID().toString().replace("-", "");
    private TrailHead head;
    private long first;

    private record Outcome(int code, String text) {}

    @BeforeEach
    void copy() throws SQLException, IOException {
        String subject = "test/" + UUID.randomUUID();
        for (int i = 0; i < 6; i++) {
            trail.record(Actor.system(), "honest", subject, Map.of("number", i));
        }
        head = trail.head().orElseThrow();
        first = trail.of(subject).get(0).position();
        try (Connection main = connect("postgres");
                Statement statement = main.createStatement()) {
            statement.execute("create database " + name);
            try (Connection copy = connect(name);
                    Statement there = copy.createStatement()) {
                there.execute(schema());
                there.execute("alter table trail_entry disable trigger all");
                StringWriter rows = new StringWriter();
                copier(main)
                        .copyOut(
                                "copy (select * from trail_entry where position <= " + head.position() + ") to stdout",
                                rows);
                copier(copy).copyIn("copy trail_entry from stdin", new StringReader(rows.toString()));
            }
        }
    }

    @AfterEach
    void drop() throws SQLException {
        try (Connection main = connect("postgres");
                Statement statement = main.createStatement()) {
            statement.execute("drop database " + name + " with (force)");
        }
    }

    @Test
    void anHonestCopyHoldsAndPrintsItsHead() {
        Outcome plain = verify();
        assertThat(plain.code()).as(plain.text()).isZero();
        assertThat(plain.text())
                .contains("holds: " + head.position() + " entries")
                .contains(head.toString());
        assertThat(verify("--head=" + head).text()).contains("entry " + head.position() + " is as noted");
    }

    @Test
    void changedContentIsNamed() throws SQLException {
        broken(
                "update trail_entry set details = '{\"number\":99}' where position = " + (first + 1),
                first + 1,
                "content");
    }

    @Test
    void aChangedActorInTheLastEntryIsNamed() throws SQLException {
        broken(
                "update trail_entry set actor = 'nobody' where position = " + head.position(),
                head.position(),
                "content");
    }

    @Test
    void aChangedHashIsToldFromChangedContent() throws SQLException {
        broken("update trail_entry set hash = repeat('a', 64) where position = " + (first + 1), first + 1, "hash");
    }

    @Test
    void aRemovedEntryIsMissing() throws SQLException {
        broken("delete from trail_entry where position = " + (first + 2), first + 2, "missing");
    }

    @Test
    void aRemovedEntryWhosePlaceIsClosedUpIsOutOfOrder() throws SQLException {
        broken(
                "delete from trail_entry where position = " + (first + 2)
                        + "; update trail_entry set position = position - 1 where position > " + (first + 2),
                first + 2,
                "order");
    }

    @Test
    void exchangedEntriesAreOutOfOrder() throws SQLException {
        long other = first + 2;
        broken(
                "update trail_entry set position = 999999999 where position = " + (first + 1)
                        + "; update trail_entry set position = " + (first + 1) + " where position = " + other
                        + "; update trail_entry set position = " + other + " where position = 999999999",
                first + 1,
                "order");
    }

    @Test
    void aForgedEntryAtTheEndIsNamed() throws SQLException {
        broken(
                "insert into trail_entry select position + 1, happened_at, actor, role, workshop, 'forged', subject, details,"
                        + " hash, repeat('b', 64), details_sha256, salt from trail_entry where position = "
                        + head.position(),
                head.position() + 1,
                "content");
    }

    @Test
    void aCutTailShowsAgainstANotedHeadOnly() throws SQLException {
        tamper("delete from trail_entry where position > " + (first + 2));
        assertThat(verify().code()).isZero();
        Outcome noted = verify("--head=" + head);
        assertThat(noted.code()).isEqualTo(1);
        assertThat(noted.text()).contains("BROKEN at entry " + (first + 3)).contains("(cut)");
    }

    @Test
    void aChainThatIsAnotherThanNotedShows() {
        Outcome other = verify("--head=" + head.position() + ":" + "c".repeat(64));
        assertThat(other.code()).isEqualTo(1);
        assertThat(other.text()).contains("BROKEN at entry " + head.position()).contains("(rewritten)");
    }

    @Test
    void whatCannotBeToldIsNeitherGoodNorBad() throws SQLException {
        assertThat(verify("--head=nothing").code()).isEqualTo(2);
        tamper("drop table trail_entry");
        Outcome none = verify();
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.text()).contains("cannot be verified");
    }

    private void broken(String statement, long position, String fault) throws SQLException {
        tamper(statement);
        Outcome outcome = verify();
        assertThat(outcome.code()).as(outcome.text()).isEqualTo(1);
        assertThat(outcome.text())
                .contains("BROKEN at entry " + position + " of ")
                .contains("(" + fault + ")");
        assertThat(outcome.text()).contains("The last entry that holds is " + (position - 1) + ":");
    }

    private void tamper(String statements) throws SQLException {
        try (Connection copy = connect(name);
                Statement statement = copy.createStatement()) {
            statement.execute(statements);
        }
    }

    private Outcome verify(String... more) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TestDatabase database = TestDatabase.shared();
        String[] arguments = new String[4 + more.length];
        arguments[0] = VerifyTrail.OPTION;
        arguments[1] = "--spring.datasource.url=" + url(name);
        arguments[2] = "--spring.datasource.username=" + database.getUsername();
        arguments[3] = "--spring.datasource.password=" + database.getPassword();
        System.arraycopy(more, 0, arguments, 4, more.length);
        int code = VerifyTrail.run(new PrintStream(out, true, StandardCharsets.UTF_8), arguments);
        return new Outcome(code, out.toString(StandardCharsets.UTF_8));
    }

    private static Connection connect(String database) throws SQLException {
        return TestDatabase.shared().connectAsOwner(database);
    }

    private static String url(String database) {
        return TestDatabase.shared().getJdbcUrl().replaceFirst("(//[^/]+/)[^?]+", "$1" + database);
    }

    private static CopyManager copier(Connection connection) throws SQLException {
        return connection.unwrap(PGConnection.class).getCopyAPI();
    }

    private static String schema() throws IOException {
        return migration("V001__kernel_domains.sql")
                + migration("V002__kernel_server_rights.sql")
                + migration("V003__trail_entries.sql");
    }

    private static String migration(String name) throws IOException {
        try (InputStream in = VerifyTrailTest.class.getResourceAsStream("/db/migration/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
