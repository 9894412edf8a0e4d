package org.voltdocket.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.kernel.Actor;
import org.voltdocket.support.ServerTest;

@ServerTest
class TrailTest {

    @Autowired
    private Trail trail;

    @Autowired
    private JdbcClient jdbc;

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
                .hasMessageContaining("append-only");
        assertThat(trail.of(subject)).hasSize(1);
    }

    @Test
    void aChangeBehindTheServersBackIsNamed() {
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
    private long afterTampering(String statement) {
        return transaction.execute(status -> {
            status.setRollbackOnly();
            jdbc.sql("set local session_replication_role = replica").update();
            assertThat(jdbc.sql(statement).update()).isEqualTo(1);
            return trail.verify().firstBroken().orElseThrow().position();
        });
    }
}
