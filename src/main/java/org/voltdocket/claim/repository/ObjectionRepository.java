package org.voltdocket.claim.repository;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.Objection;

/** Objections and their answers in PostgreSQL; appended, never changed. */
@Component
public class ObjectionRepository {

    private final JdbcClient db;

    ObjectionRepository(JdbcClient db) {
        this.db = db;
    }

    public void keep(UUID claimId, String reason, Instant at, String by) {
        db.sql("insert into claim_objection (id, claim_id, made_at, made_by, reason) values (?, ?, ?, ?, ?)")
                .param(UUID.randomUUID())
                .param(claimId)
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .param(reason)
                .update();
    }

    public void answer(UUID objection, String answer, Instant at, String by) {
        db.sql(
                        "insert into claim_objection_answer (objection_id, answered_at, answered_by, answer) values (?, ?, ?, ?)")
                .param(objection)
                .param(at.atOffset(ZoneOffset.UTC))
                .param(by)
                .param(answer)
                .update();
    }

    /** Oldest first. */
    public List<Objection> of(UUID claimId) {
        return db.sql("select o.*, a.answered_at, a.answered_by, a.answer from claim_objection o"
                        + " left join claim_objection_answer a on a.objection_id = o.id where o.claim_id = ?"
                        + " order by o.ordinal")
                .param(claimId)
                .query(ObjectionRepository::read)
                .list();
    }

    private static Objection read(ResultSet row, int number) throws SQLException {
        String answer = row.getString("answer");
        return new Objection(
                row.getObject("id", UUID.class),
                row.getTimestamp("made_at").toInstant(),
                row.getString("made_by"),
                row.getString("reason"),
                answer == null
                        ? Optional.empty()
                        : Optional.of(new Objection.Answer(
                                row.getTimestamp("answered_at").toInstant(), row.getString("answered_by"), answer)));
    }
}
