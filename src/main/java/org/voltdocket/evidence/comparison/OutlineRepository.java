package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.evidence.comparison.CurveSimilarity.Vote;

/** Outlines and landmarks of recordings in PostgreSQL. */
@Component
public class OutlineRepository {

    private static final int BATCH = 500;
    /** A landmark of more recordings is common and not used for the search. */
    private static final int COMMON = 200;
    /** Recordings that are compared: those with the most common landmarks at one offset. */
    private static final int CANDIDATES = 40;
    /**
     * Votes are counted in cells of eight steps, in two rows of cells that are shifted by half a cell, so that votes within five
     * steps share a cell of one of the rows.
     */
    private static final String VOTES = """
            with own as materialized (
                select code, step from recording_landmark where evidence_id = :id),
            rare as materialized (
                select code from (select distinct code from own) as mine
                where (select count(*) from (select from recording_landmark as l where l.code = mine.code limit :common + 1)
                    as few) <= :common),
            vote as materialized (
                select other.evidence_id, own.code, own.step, other.step as other_step
                from rare join own using (code) join recording_landmark as other using (code)
                where other.evidence_id <> :id),
            once as (
                select distinct evidence_id, code / :scale as scale, step, other_step from vote),
            cell as (
                select evidence_id, count(*) as votes
                from once cross join (values (0), (4)) as shifted (by)
                group by evidence_id, scale, by, (step - other_step + :longest + by) / 8),
            best as (
                select evidence_id, max(votes) as votes from cell where votes >= :fewest
                group by evidence_id order by 2 desc, 1 limit :candidates)
            select evidence_id, code, step, other_step from vote join best using (evidence_id)
            order by best.votes desc, evidence_id""";

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    OutlineRepository(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** Stores the outlines of a new recording and queues it for comparison, in the caller's transaction. */
    public void keep(UUID caseId, UUID evidenceId, Recording recording) {
        outline(evidenceId, recording);
        jdbc.sql("insert into recording_to_compare (evidence_id, case_id, outlined) values (?, ?, true)")
                .param(evidenceId)
                .param(caseId)
                .update();
    }

    void outline(UUID evidenceId, Recording recording) {
        List<Object[]> rows = new ArrayList<>();
        for (VoltageOutline outline : VoltageOutline.of(recording)) {
            jdbc.sql("insert into recording_outline (evidence_id, scale, data) values (?, ?, ?)")
                    .param(evidenceId)
                    .param(id(outline.scale()))
                    .param(outline.packed())
                    .update();
            // from the packed outline, so that both sides of a comparison see the same values
            for (Landmarks.Code code : Landmarks.of(VoltageOutline.unpacked(outline.scale(), outline.packed()))) {
                rows.add(new Object[] {code.code(), evidenceId, code.step()});
            }
        }
        for (int from = 0; from < rows.size(); from += BATCH) {
            batches.batchUpdate(
                    "insert into recording_landmark (code, evidence_id, step) values (?, ?, ?)",
                    rows.subList(from, Math.min(from + BATCH, rows.size())));
        }
    }

    /** Common landmarks with another recording, by scale. */
    record Votes(UUID other, Map<OutlineScale, List<Vote>> byScale) {}

    /** Recordings with common landmarks at a common offset, those with most first. */
    List<Votes> votes(UUID evidenceId) {
        Map<UUID, Votes> votes = new LinkedHashMap<>();
        jdbc.sql(VOTES)
                .param("id", evidenceId)
                .param("common", COMMON)
                .param("scale", Landmarks.CODES_OF_A_SCALE)
                .param("longest", 2 * VoltageOutline.LONGEST)
                .param("fewest", CurveSimilarity.FEWEST_VOTES)
                .param("candidates", CANDIDATES)
                .query(row -> {
                    votes.computeIfAbsent(row.getObject(1, UUID.class), id -> new Votes(id, new HashMap<>()))
                            .byScale()
                            .computeIfAbsent(Landmarks.scaleOf(row.getInt(2)), scale -> new ArrayList<>())
                            .add(new Vote(row.getInt(3), row.getInt(4)));
                });
        return List.copyOf(votes.values());
    }

    Map<OutlineScale, VoltageOutline> outlines(UUID evidenceId) {
        Map<OutlineScale, VoltageOutline> out = new HashMap<>();
        jdbc.sql("select scale, data from recording_outline where evidence_id = ?")
                .param(evidenceId)
                .query(row -> {
                    OutlineScale scale = OutlineScale.valueOf(row.getString(1).toUpperCase(Locale.ROOT));
                    out.put(scale, VoltageOutline.unpacked(scale, row.getBytes(2)));
                });
        return out;
    }

    private static String id(OutlineScale scale) {
        return scale.name().toLowerCase(Locale.ROOT);
    }
}
