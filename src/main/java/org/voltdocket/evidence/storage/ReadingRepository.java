package org.voltdocket.evidence.storage;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.read.ParsedFile;
import org.voltdocket.diagnosis.read.ReadResult;
import org.voltdocket.diagnosis.read.TestRecordReader;
import org.voltdocket.evidence.EvidenceItem;

/** Readings of tests and recordings in PostgreSQL. */
@Component
public class ReadingRepository {

    private final JdbcClient jdbc;
    private final RecordingBlockRepository blocks;
    private final RecordingLoader recordings;

    ReadingRepository(JdbcClient jdbc, RecordingBlockRepository blocks, RecordingLoader recordings) {
        this.jdbc = jdbc;
        this.blocks = blocks;
        this.recordings = recordings;
    }

    /** Stores a reading in the caller's transaction. */
    public void keep(UUID evidenceId, Reading reading) {
        if (reading instanceof Recording recording) {
            blocks.keep(evidenceId, recording);
        } else {
            jdbc.sql("insert into test_reading (evidence_id, reading) values (?, ?)")
                    .param(evidenceId)
                    .param(TestRecordWriter.write(reading))
                    .update();
        }
    }

    /**
     * The readings of the items that have one, by item, in a fixed number of queries. Requires a transaction; without one
     * the driver fetches all blocks at once.
     */
    Map<UUID, Reading> of(List<EvidenceItem> items) {
        Map<UUID, Reading> readings = new HashMap<>(
                recordings.of(items.stream().filter(EvidenceItem::isRecording).toList()));
        UUID[] ids = items.stream()
                .filter(item -> !item.isRecording() && item.kind() != EvidenceKind.DOCUMENT)
                .map(EvidenceItem::id)
                .toArray(UUID[]::new);
        jdbc.sql("select evidence_id, reading from test_reading where evidence_id = any(?)")
                .param(ids)
                .query(row -> {
                    readings.put(row.getObject(1, UUID.class), test(row.getString(2)));
                });
        return readings;
    }

    private static Reading test(String canonical) {
        // its time was compared with the clock when it was received
        Instant anyTime = Instant.parse("9999-01-01T00:00:00Z");
        ReadResult outcome = new TestRecordReader(anyTime).read(canonical.getBytes(StandardCharsets.UTF_8));
        if (outcome instanceof ParsedFile parsed) {
            return parsed.reading();
        }
        throw new IllegalStateException("a kept test can no longer be read: " + canonical);
    }
}
