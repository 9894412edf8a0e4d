package org.voltdocket.evidence.storage;

import java.io.OutputStream;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.kernel.Sha256;

/**
 * Reads all stored evidence and reports what is damaged: originals by their digest and length,
 * blocks of recordings by their check sum and number. At most 1 MiB is in memory at a time.
 */
@Component
public class EvidenceCheck {

    /** Pieces that the driver fetches at a time. */
    private static final int PORTION = 8;

    /** Faults that are reported; the others are only counted. */
    private static final int MOST_TOLD = 100;

    private final OriginalFileStore raw;
    private final OrphanedObjects strays;
    private final JdbcTemplate streaming;

    EvidenceCheck(OriginalFileStore raw, OrphanedObjects strays, DataSource source) {
        this.raw = raw;
        this.strays = strays;
        this.streaming = new JdbcTemplate(source);
        this.streaming.setFetchSize(PORTION);
    }

    /**
     * The result.
     *
     * @param files originals read, wherever they are
     * @param inStore how many of them are in the object store
     * @param bytes total size of the originals
     * @param blocks blocks of recordings read
     * @param damaged number of damaged originals, blocks and recordings
     * @param faults descriptions of the first ones
     * @param strays objects in the store without evidence; not damage
     */
    public record Found(
            long files, long inStore, long bytes, long blocks, long damaged, List<String> faults, Strays strays) {

        public boolean sound() {
            return damaged == 0;
        }
    }

    /**
     * Objects without a reference: of an upload that was interrupted before the database was written, or that is in progress.
     *
     * @param names of the first of them
     */
    public record Strays(long count, List<String> names) {}

    private static final class Tally {
        private long files;
        private long inStore;
        private long bytes;
        private long blocks;
        private long damaged;
        private final List<String> faults = new ArrayList<>();

        void fault(String what) {
            damaged++;
            if (faults.size() < MOST_TOLD) {
                faults.add(what);
            }
        }
    }

    /**
     * Reads everything.
     *
     * @throws org.voltdocket.evidence.original.ObjectStoreUnavailableException if the object store does not answer
     */
    @Transactional(readOnly = true)
    public Found all() {
        Tally tally = new Tally();
        streaming.query("select sha256, place = 'store' from raw_file where place <> 'erased' order by sha256", row -> {
            original(tally, new Sha256(row.getString(1)), row.getBoolean(2));
        });
        streaming.query("select evidence_id, channel, block_no, rows, crc32, data from recording_block", row -> {
            block(tally, row);
        });
        missing(tally);
        return new Found(
                tally.files,
                tally.inStore,
                tally.bytes,
                tally.blocks,
                tally.damaged,
                List.copyOf(tally.faults),
                strays.find(MOST_TOLD));
    }

    private void original(Tally tally, Sha256 sha256, boolean inStore) {
        Counter counter = new Counter();
        tally.files++;
        tally.inStore += inStore ? 1 : 0;
        try {
            raw.write(sha256, counter);
        } catch (IllegalStateException e) {
            tally.fault(e.getMessage());
            return;
        }
        tally.bytes += counter.bytes;
    }

    private static void block(Tally tally, ResultSet row) throws java.sql.SQLException {
        tally.blocks++;
        try {
            new RecordingBlockRepository.Block(
                            row.getString(2), row.getInt(3), row.getInt(4), row.getLong(5), row.getBytes(6))
                    .checked();
        } catch (IllegalStateException e) {
            tally.fault("Recording " + row.getString(1) + ": " + e.getMessage());
        }
    }

    /** A recording has a block of time and of each channel for each stretch of rows. */
    private void missing(Tally tally) {
        streaming.query(
                "select r.evidence_id, (1 + (select count(*) from recording_channel c where c.evidence_id = r.evidence_id))"
                        + " * ((r.rows + " + (BlockCodec.ROWS - 1) + ") / " + BlockCodec.ROWS + ") as due,"
                        + " (select count(*) from recording_block b where b.evidence_id = r.evidence_id) as there"
                        + " from recording r",
                row -> {
                    if (row.getLong(2) != row.getLong(3)) {
                        tally.fault("Recording " + row.getString(1) + " has " + row.getLong(3) + " of " + row.getLong(2)
                                + " blocks.");
                    }
                });
    }

    private static final class Counter extends OutputStream {
        private long bytes;

        @Override
        public void write(int b) {
            bytes++;
        }

        @Override
        public void write(byte[] b, int off, int len) {
            bytes += len;
        }
    }
}
