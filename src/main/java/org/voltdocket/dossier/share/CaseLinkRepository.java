package org.voltdocket.dossier.share;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;

/** Tables {@code case_link}, {@code case_link_revocation} and {@code case_link_access}. */
@Repository
class CaseLinkRepository {

    private static final String SELECT = """
            select l.id, l.case_id, l.created_at, l.created_by, l.expires_at, r.revoked_at,
                   (select count(*) from case_link_access a where a.link_id = l.id) as accesses,
                   (select max(a.at) from case_link_access a where a.link_id = l.id) as last_access
            from case_link l left join case_link_revocation r on r.link_id = l.id
            """;

    private final JdbcClient db;

    CaseLinkRepository(JdbcClient db) {
        this.db = db;
    }

    void add(CaseLink link, Sha256 secret) {
        db.sql(
                        "insert into case_link (id, case_id, secret, created_at, created_by, expires_at) values (?, ?, ?, ?, ?, ?)")
                .param(link.id())
                .param(link.caseId())
                .param(secret.hex())
                .param(Timestamp.from(link.createdAt()))
                .param(link.createdBy())
                .param(Timestamp.from(link.expiresAt()))
                .update();
    }

    /** @return false if it was revoked before */
    boolean revoke(UUID link, Actor actor, Instant at) {
        return db.sql("insert into case_link_revocation (link_id, revoked_at, revoked_by) values (?, ?, ?)"
                                + " on conflict do nothing")
                        .param(link)
                        .param(Timestamp.from(at))
                        .param(actor.user())
                        .update()
                == 1;
    }

    void recordAccess(UUID link, Instant at) {
        db.sql("insert into case_link_access (link_id, at) values (?, ?)")
                .param(link)
                .param(Timestamp.from(at))
                .update();
    }

    /** Links of a case, latest first. */
    List<CaseLink> ofCase(UUID caseId) {
        return db.sql(SELECT + " where l.case_id = ? order by l.created_at desc, l.id")
                .param(caseId)
                .query(CaseLinkRepository::row)
                .list();
    }

    Optional<CaseLink> find(Sha256 secret) {
        return db.sql(SELECT + " where l.secret = ?")
                .param(secret.hex())
                .query(CaseLinkRepository::row)
                .optional();
    }

    private static CaseLink row(ResultSet row, int index) throws SQLException {
        return new CaseLink(
                row.getObject("id", UUID.class),
                row.getObject("case_id", UUID.class),
                row.getTimestamp("created_at").toInstant(),
                row.getString("created_by"),
                row.getTimestamp("expires_at").toInstant(),
                instant(row.getTimestamp("revoked_at")),
                row.getInt("accesses"),
                instant(row.getTimestamp("last_access")));
    }

    private static Instant instant(Timestamp at) {
        return at == null ? null : at.toInstant();
    }
}
