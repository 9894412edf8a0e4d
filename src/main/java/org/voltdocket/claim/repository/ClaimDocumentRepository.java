package org.voltdocket.claim.repository;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.claim.DocumentKind;
import org.voltdocket.kernel.Sha256;

/** The documents of decisions, stored byte for byte. Callers check first, by the claim service, whether the actor may see the claim. */
@Service
public class ClaimDocumentRepository {

    private final JdbcClient db;
    private final Clock clock;

    ClaimDocumentRepository(JdbcClient db, Clock clock) {
        this.db = db;
        this.clock = clock;
    }

    /** Stores a document in the transaction of the decision. */
    @Transactional(propagation = Propagation.MANDATORY)
    public Sha256 keep(UUID claimId, DocumentKind kind, byte[] bytes) {
        Sha256 digest = Sha256.of(bytes);
        db.sql("insert into claim_document (claim_id, kind, sha256, bytes, printed_at) values (?, ?, ?, ?, ?)")
                .param(claimId)
                .param(kind.id())
                .param(digest.hex())
                .param(bytes)
                .param(clock.instant().atOffset(ZoneOffset.UTC))
                .update();
        return digest;
    }

    /** A document of the decision; empty if the claim is not decided or the document was erased. */
    @Transactional(readOnly = true)
    public Optional<ClaimDocument> read(UUID claimId, DocumentKind kind) {
        return db.sql("select sha256, bytes from claim_document where claim_id = ? and kind = ? and bytes <> ''")
                .param(claimId)
                .param(kind.id())
                .query((row, n) -> new ClaimDocument(kind, new Sha256(row.getString("sha256")), row.getBytes("bytes")))
                .optional();
    }

    /** The digests of the documents of the decision. */
    @Transactional(readOnly = true)
    public Map<DocumentKind, Sha256> digests(UUID claimId) {
        Map<DocumentKind, Sha256> digests = new EnumMap<>(DocumentKind.class);
        db.sql("select kind, sha256 from claim_document where claim_id = ?")
                .param(claimId)
                .query(row -> {
                    digests.put(
                            DocumentKind.of(row.getString("kind")).orElseThrow(), new Sha256(row.getString("sha256")));
                });
        return digests;
    }
}
