package org.voltdocket.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.kernel.Actor;
import org.voltdocket.support.ServerTest;
import org.voltdocket.support.TestDatabase;

@ServerTest
class TrailTest {

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private CanonicalJson json;

    @Autowired
    private TransactionTemplate transaction;

    private final String subject = "test/" + UUID.randomUUID();

    @Test
    void entriesComeBackAsWrittenAndInOrder() {
        trail.record(Actor.system(), "first", subject, Map.of("b", 2, "a", "ä", "list", List.of(1.5, "x")));
        trail.record(Actor.system(), "second", subject, Map.of());
        List<TrailEntry> entries = trail.of(subject);
        assertThat(entries).extracting(TrailEntry::act).containsExactly("first", "second");
        assertThat(entries.get(0).details()).containsEntry("b", 2).containsEntry("a", "ä");
        assertThat(entries.get(0).details().keySet()).containsExactly("a", "b", "list");
        assertThat(trail.verify().holds()).isTrue();
    }

    @Test
    void aDeedThatIsRolledBackLeavesNoEntry() {
        transaction.executeWithoutResult(status -> {
            trail.record(Actor.system(), "undone", subject, Map.of());
            status.setRollbackOnly();
        });
        assertThat(trail.of(subject)).isEmpty();
        assertThat(trail.verify().holds()).isTrue();
    }

    @Test
    void manyWritersMakeOneChain() throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(6);
        for (int i = 0; i < 60; i++) {
            int number = i;
            pool.submit(() -> trail.record(Actor.system(), "many", subject, Map.of("number", number)));
        }
        pool.shutdown();
        assertThat(pool.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
        assertThat(trail.of(subject)).hasSize(60);
        assertThat(trail.verify().holds()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"update trail_entry set act = 'forged'", "delete from trail_entry", "truncate trail_entry"})
    void theTableRefusesChange(String statement) {
        trail.record(Actor.system(), "kept", subject, Map.of());
        assertThatThrownBy(() -> jdbc.sql(statement).update())
                .isInstanceOf(DataAccessException.class)
                .hasStackTraceContaining("permission denied");
        assertThat(trail.of(subject)).hasSize(1);
    }

    @Test
    void erasedDetailsLeaveAChainThatVerifies() {
        trail.record(Actor.system(), "opened", subject, Map.of("vin", "a secret"));
        trail.record(Actor.system(), "changed", subject, Map.of("text", "a secret"));
        trail.erase(Actor.system(), subject, Map.of("reason", "asked for by the owner"));
        List<TrailEntry> entries = trail.of(subject);
        assertThat(entries).extracting(TrailEntry::act).containsExactly("opened", "changed", Trail.ERASED);
        assertThat(entries.get(0).details()).isEmpty();
        assertThat(entries.get(1).details()).isEmpty();
        assertThat(entries.get(2).details()).containsEntry("reason", "asked for by the owner");
        assertThat(trail.verify().holds()).isTrue();
    }

    /** Blanked details look like erased ones; the chain has no entry that records the erasure. */
    @Test
    void anErasureThatNobodyRecordedIsNamed() throws SQLException {
        trail.record(Actor.system(), "kept", subject, Map.of("text", "stays"));
        long position = trail.of(subject).get(0).position();
        assertThat(afterTampering("update trail_entry set details = '{}', salt = null where position = " + position))
                .isEqualTo(position);
    }

    @Test
    void aChangeBehindTheServersBackIsNamed() throws SQLException {
        for (int i = 0; i < 4; i++) {
            trail.record(Actor.system(), "honest", subject, Map.of("number", i));
        }
        long second = trail.of(subject).get(1).position();
        String at = " where position = " + second;
        assertThat(afterTampering("update trail_entry set details = '{\"number\":99}'" + at))
                .isEqualTo(second);
        assertThat(afterTampering("update trail_entry set happened_at = happened_at - interval '1 day'" + at))
                .isEqualTo(second);
        assertThat(afterTampering("delete from trail_entry" + at)).isEqualTo(second);
        assertThat(afterTampering("update trail_entry set hash = repeat('a', 64)" + at))
                .isEqualTo(second);
        assertThat(trail.verify().holds()).as("after the rollbacks").isTrue();
    }

    /** Tampers as a superuser could, with triggers off, looks, and takes it all back. */
    private long afterTampering(String statement) throws SQLException {
        try (Connection owner = TestDatabase.shared().connectAsOwner("postgres")) {
            owner.setAutoCommit(false);
            SingleConnectionDataSource source = new SingleConnectionDataSource(owner, true);
            JdbcClient db = JdbcClient.create(source);
            db.sql("set local session_replication_role = replica").update();
            assertThat(db.sql(statement).update()).isEqualTo(1);
            ChainReader reader = new ChainReader(json, Optional.empty());
            new TrailRepository(db, new JdbcTemplate(source)).each(reader::step);
            owner.rollback();
            return reader.result().firstBroken().orElseThrow().position();
        }
    }
}
