package org.voltdocket.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.evidence.waveform.Landmarks;
import org.voltdocket.evidence.waveform.Likeness.Vote;
import org.voltdocket.evidence.waveform.Outline;
import org.voltdocket.evidence.waveform.Scale;

/** Keeps what recordings are recognised by. */
@Component
class OutlineStore {

    private static final int BATCH = 500;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    OutlineStore(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** Outlines a recording just received, and notes that it is to be compared; in the caller's transaction. */
    void keep(UUID caseId, UUID evidenceId, Recording recording) {
        outline(evidenceId, recording);
        jdbc.sql("insert into recording_to_compare (evidence_id, case_id, outlined) values (?, ?, true)")
                .param(evidenceId)
                .param(caseId)
                .update();
    }

    void outline(UUID evidenceId, Recording recording) {
        List<Object[]> rows = new ArrayList<>();
        for (Outline outline : Outline.of(recording)) {
            jdbc.sql("insert into recording_outline (evidence_id, scale, data) values (?, ?, ?)")
                    .param(evidenceId)
                    .param(id(outline.scale()))
                    .param(outline.packed())
                    .update();
            // of what is kept, so that both sides of a comparison know the same
            for (Landmarks.Code code : Landmarks.of(Outline.unpacked(outline.scale(), outline.packed()))) {
                rows.add(new Object[] {code.code(), evidenceId, code.step()});
            }
        }
        for (int from = 0; from < rows.size(); from += BATCH) {
            batches.batchUpdate(
                    "insert into recording_landmark (code, evidence_id, step) values (?, ?, ?)",
                    rows.subList(from, Math.min(from + BATCH, rows.size())));
        }
    }

    /** Places where other recordings have a landmark in common with this one, by recording and scale. */
    Map<UUID, Map<Scale, List<Vote>>> votes(UUID evidenceId) {
        Map<UUID, Map<Scale, List<Vote>>> votes = new HashMap<>();
        jdbc.sql("""
                        select other.evidence_id, own.code, own.step, other.step as other_step
                        from recording_landmark own join recording_landmark other on other.code = own.code
                        where own.evidence_id = ? and other.evidence_id <> own.evidence_id""").param(evidenceId).query(row -> {
            votes.computeIfAbsent(row.getObject(1, UUID.class), id -> new HashMap<>())
                    .computeIfAbsent(Landmarks.scaleOf(row.getInt(2)), scale -> new ArrayList<>())
                    .add(new Vote(row.getInt(3), row.getInt(4)));
        });
        return votes;
    }

    Map<Scale, Outline> outlines(UUID evidenceId) {
        Map<Scale, Outline> out = new HashMap<>();
        jdbc.sql("select scale, data from recording_outline where evidence_id = ?")
                .param(evidenceId)
                .query(row -> {
                    Scale scale = Scale.valueOf(row.getString(1).toUpperCase(Locale.ROOT));
                    out.put(scale, Outline.unpacked(scale, row.getBytes(2)));
                });
        return out;
    }

    private static String id(Scale scale) {
        return scale.name().toLowerCase(Locale.ROOT);
    }
}
