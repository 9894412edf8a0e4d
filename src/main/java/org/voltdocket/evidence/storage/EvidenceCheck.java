package org.voltdocket.evidence.storage;

import java.io.OutputStream;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Sha256;

/**
 * Reads everything that was kept of the evidence and says what is damaged: the originals against their digest and length,
 * the blocks of recordings against their check sum and number. A piece is in memory at a time, 1 MiB at most.
 */
@Component
public class EvidenceCheck {

    /** Pieces that the driver fetches at a time. */
    private static final int PORTION = 8;

    /** More faults than these are counted, not told. */
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
     * What was found.
     *
     * @param files originals read, wherever they are
     * @param inStore of these, how many are in the store of objects
     * @param bytes their length as they were sent
     * @param blocks blocks of recordings read
     * @param damaged how many originals, blocks and recordings are not as they were kept
     * @param faults each of the first of them in words
     * @param strays objects in the store that are no evidence: no damage
     */
    public record Found(
            long files, long inStore, long bytes, long blocks, long damaged, List<String> faults, Strays strays) {

        public boolean sound() {
            return damaged == 0;
        }
    }

    /**
     * Objects that nobody refers to: left by an upload that was broken off between store and database, or under way just now.
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
     * Reads it all.
     *
     * @throws org.voltdocket.evidence.storage.ObjectStoreUnavailableException if the store of objects does not answer: what is in it cannot be told
     */
    @Transactional(readOnly = true)
    public Found all() {
        Tally tally = new Tally();
        streaming.query("select sha256, place = 'store' from raw_file order by sha256", row -> {
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
