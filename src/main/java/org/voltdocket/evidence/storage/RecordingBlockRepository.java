package org.voltdocket.evidence.storage;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Recording.Mark;

/** Keeps recordings as columns in blocks. */
@Component
public class RecordingBlockRepository {

    public static final String TIME = "time";

    private static final int BATCH = 16;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    /** What is known of a recording before its blocks are read. */
    public record Extent(int rows, double fromS, double toS) {}

    /** A block of the time column. */
    public record Span(int blockNo, int rows) {}

    /** One packed block. */
    public record Block(String channel, int blockNo, int rows, long crc32, byte[] data) {

        public byte[] checked() {
            if (BlockCodec.check(data) != crc32) {
                throw new IllegalStateException("Block " + blockNo + " of " + channel
                        + " no longer gives its check sum: the database was changed or damaged.");
            }
            return data;
        }
    }

    RecordingBlockRepository(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    void keep(UUID id, Recording recording) {
        double[] time = recording.timeS();
        int rows = recording.rows();
        batches.update("insert into recording values (?, ?, ?, ?)", id, rows, time[0], time[rows - 1]);
        List<Object[]> waiting = new ArrayList<>();
        for (int from = 0; from < rows; from += BlockCodec.ROWS) {
            int to = Math.min(from + BlockCodec.ROWS, rows);
            byte[] packed = BlockCodec.pack(time, from, to);
            add(waiting, id, TIME, time, from, to, time[from], time[to - 1], packed);
        }
        for (Channel channel : Channel.values()) {
            if (recording.has(channel)) {
                keep(waiting, id, channel, time, recording.channel(channel));
            }
        }
        flush(waiting);
        List<Mark> marks = recording.marks();
        List<Object[]> notes = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            notes.add(new Object[] {id, i, marks.get(i).atS(), marks.get(i).text()});
        }
        batches.batchUpdate("insert into recording_mark values (?, ?, ?, ?)", notes);
    }

    private void keep(List<Object[]> waiting, UUID id, Channel channel, double[] time, float[] values) {
        int samples = 0;
        for (float value : values) {
            samples += Float.isNaN(value) ? 0 : 1;
        }
        batches.update(
                "insert into recording_channel values (?, ?, ?, ?)",
                id,
                channel.id(),
                samples,
                SamplingInterval.of(time, values, samples));
        for (int from = 0; from < values.length; from += BlockCodec.ROWS) {
            int to = Math.min(from + BlockCodec.ROWS, values.length);
            float low = Float.POSITIVE_INFINITY;
            float high = Float.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                low = values[i] < low ? values[i] : low;
                high = values[i] > high ? values[i] : high;
            }
            Double least = low > high ? null : (double) low;
            Double most = low > high ? null : (double) high;
            add(waiting, id, channel.id(), time, from, to, least, most, BlockCodec.pack(values, from, to));
        }
    }

    private void add(
            List<Object[]> waiting,
            UUID id,
            String channel,
            double[] time,
            int from,
            int to,
            Double low,
            Double high,
            byte[] packed) {
        waiting.add(new Object[] {
            id,
            channel,
            from / BlockCodec.ROWS,
            to - from,
            time[from],
            time[to - 1],
            low,
            high,
            BlockCodec.check(packed),
            packed
        });
        if (waiting.size() == BATCH) {
            flush(waiting);
        }
    }

    private void flush(List<Object[]> waiting) {
        batches.batchUpdate("""
                insert into recording_block
                    (evidence_id, channel, block_no, rows, from_s, to_s, low, high, crc32, data)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""", waiting);
        waiting.clear();
    }

    public Extent extent(UUID id) {
        return jdbc.sql("select rows, from_s, to_s from recording where evidence_id = ?")
                .param(id)
                .query((row, n) -> new Extent(row.getInt(1), row.getDouble(2), row.getDouble(3)))
                .single();
    }

    /** Median step between samples by channel, s. */
    public Map<Channel, Double> steps(UUID id) {
        Map<Channel, Double> steps = new EnumMap<>(Channel.class);
        jdbc.sql("select channel, median_step_s from recording_channel where evidence_id = ?")
                .param(id)
                .query(row -> {
                    steps.put(Channel.of(row.getString(1)), row.getDouble(2));
                });
        return steps;
    }

    /** Blocks that touch the stretch, in order. */
    public List<Span> spans(UUID id, double from, double to) {
        return jdbc.sql("""
                        select block_no, rows from recording_block
                        where evidence_id = ? and channel = 'time' and to_s >= ? and from_s <= ? order by block_no""")
                .param(id)
                .param(from)
                .param(to)
                .query((row, n) -> new Span(row.getInt(1), row.getInt(2)))
                .list();
    }

    public Block block(UUID id, String channel, int blockNo) {
        return jdbc.sql("""
                        select rows, crc32, data from recording_block
                        where evidence_id = ? and channel = ? and block_no = ?""")
                .param(id)
                .param(channel)
                .param(blockNo)
                .query((row, n) -> new Block(channel, blockNo, row.getInt(1), row.getLong(2), row.getBytes(3)))
                .single();
    }

    public List<Mark> marks(UUID id, double from, double to) {
        return jdbc.sql(
                        "select at_s, text from recording_mark where evidence_id = ? and at_s between ? and ? order by seq")
                .param(id)
                .param(from)
                .param(to)
                .query((row, n) -> new Mark(row.getDouble(1), row.getString(2)))
                .list();
    }
}
