package org.voltdocket.evidence.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Recording.Mark;
import org.voltdocket.evidence.EvidenceItem;

/** Puts recordings together again from their blocks, any number of them in two queries. */
@Component
public class RecordingLoader {

    /** Blocks fetched at a time; the driver holds these beside the columns. */
    private static final int PORTION = 16;

    private final JdbcTemplate jdbc;

    RecordingLoader(DataSource dataSource) {
        this.jdbc = new JdbcTemplate(dataSource);
        this.jdbc.setFetchSize(PORTION);
    }

    private static final class Columns {
        private final EvidenceItem item;
        private final double[] time;
        private final Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        private final List<Mark> marks = new ArrayList<>();
        private int blocks;

        Columns(EvidenceItem item) {
            this.item = item;
            this.time = new double[item.rows()];
            item.channels().forEach(channel -> channels.put(channel, new float[item.rows()]));
        }

        void fill(RecordingBlockRepository.Block block) {
            int from = block.blockNo() * BlockCodec.ROWS;
            blocks++;
            if (block.channel().equals(RecordingBlockRepository.TIME)) {
                BlockCodec.unpack(block.checked(), time, from, block.rows());
            } else {
                BlockCodec.unpack(block.checked(), channels.get(Channel.of(block.channel())), from, block.rows());
            }
        }

        Recording recording() {
            int each = (time.length + BlockCodec.ROWS - 1) / BlockCodec.ROWS;
            if (blocks != each * (1 + channels.size())) {
                throw new IllegalStateException("Blocks of recording " + item.id()
                        + " are missing: the database was changed or damaged. Restore it from a backup.");
            }
            return new Recording(item.kind(), item.takenAt(), time, channels, marks);
        }
    }

    public Map<UUID, Recording> of(List<EvidenceItem> items) {
        Map<UUID, Columns> open = new HashMap<>();
        items.forEach(item -> open.put(item.id(), new Columns(item)));
        Object ids = items.stream().map(EvidenceItem::id).toArray(UUID[]::new);
        jdbc.query(
                """
                select evidence_id, channel, block_no, rows, crc32, data from recording_block
                where evidence_id = any(?) order by evidence_id, channel, block_no""",
                row -> {
                    open.get(row.getObject(1, UUID.class)).fill(block(row));
                },
                ids);
        jdbc.query(
                "select evidence_id, at_s, text from recording_mark where evidence_id = any(?) order by evidence_id, seq",
                row -> {
                    open.get(row.getObject(1, UUID.class)).marks.add(new Mark(row.getDouble(2), row.getString(3)));
                },
                ids);
        Map<UUID, Recording> whole = new HashMap<>();
        open.forEach((id, columns) -> whole.put(id, columns.recording()));
        return whole;
    }

    private static RecordingBlockRepository.Block block(ResultSet row) throws SQLException {
        return new RecordingBlockRepository.Block(
                row.getString(2), row.getInt(3), row.getInt(4), row.getLong(5), row.getBytes(6));
    }
}
