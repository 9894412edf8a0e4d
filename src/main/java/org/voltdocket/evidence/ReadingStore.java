package org.voltdocket.evidence;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;

/** Keeps what was read from the files. */
@Component
class ReadingStore {

    private final JdbcClient jdbc;
    private final BlockStore blocks;

    ReadingStore(JdbcClient jdbc, BlockStore blocks) {
        this.jdbc = jdbc;
        this.blocks = blocks;
    }

    /** Keeps a reading in the caller's transaction. */
    void keep(UUID evidenceId, Reading reading) {
        if (reading instanceof Recording recording) {
            blocks.keep(evidenceId, recording);
        } else {
            jdbc.sql("insert into test_reading (evidence_id, reading) values (?, ?)")
                    .param(evidenceId)
                    .param(TestRecordWriter.write(reading))
                    .update();
        }
    }

    /** The reading of an item; empty for a document. */
    Optional<Reading> find(UUID evidenceId, EvidenceKind kind, OffsetDateTime startedAt) {
        return switch (kind) {
            case DOCUMENT -> Optional.empty();
            case BATTERY_TEST, CRANKING_TEST, CHARGING_TEST -> Optional.of(test(evidenceId));
            default -> Optional.of(blocks.recording(evidenceId, kind, startedAt));
        };
    }

    private Reading test(UUID evidenceId) {
        String text = jdbc.sql("select reading from test_reading where evidence_id = ?")
                .param(evidenceId)
                .query(String.class)
                .single();
        // it was checked against the clock when it came in
        Outcome outcome =
                new TestRecordReader(Instant.parse("9999-01-01T00:00:00Z")).read(text.getBytes(StandardCharsets.UTF_8));
        if (outcome instanceof Parsed parsed) {
            return parsed.reading();
        }
        throw new IllegalStateException("the kept reading of evidence " + evidenceId + " can no longer be read");
    }
}
