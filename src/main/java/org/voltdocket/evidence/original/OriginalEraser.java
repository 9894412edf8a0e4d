package org.voltdocket.evidence.original;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/** Erases original files and the free text of evidence; items, digests and readings stay. */
@Component
public class OriginalEraser {

    private static final Logger LOG = LoggerFactory.getLogger(OriginalEraser.class);

    private final JdbcClient jdbc;
    private final Optional<ObjectStore> store;

    @Autowired
    OriginalEraser(JdbcClient jdbc, ObjectStoreConfiguration named) {
        this.jdbc = jdbc;
        this.store = named.get();
    }

    /** An original that is erased, and whether its bytes are an object in the store. */
    public record Removed(Sha256 sha256, boolean inStore) {}

    /**
     * Erases the originals of a case in the caller's transaction: key and bytes in the database. An original that another case
     * needs stays.
     *
     * @param kinds identifiers of the kinds of evidence
     */
    public List<Removed> erase(UUID caseId, String[] kinds) {
        return jdbc.sql("select sha256, place from erase_originals(?, ?)")
                .param(caseId)
                .param(kinds)
                .query((row, n) -> new Removed(
                        new Sha256(row.getString(1)), row.getString(2).equals("store")))
                .list();
    }

    /** Erases notes, file names and marks of a case's items in the caller's transaction. */
    public void eraseTexts(UUID caseId) {
        jdbc.sql("select erase_evidence_texts(?)").param(caseId).query(rs -> {});
    }

    /**
     * Removes objects from the store, after the commit. One that cannot be removed is logged and listed by
     * {@code --verify-evidence} as an object that is no evidence.
     */
    public void removeObjects(List<Removed> removed) {
        for (Removed original : removed) {
            if (original.inStore() && store.isPresent()) {
                try {
                    store.get().remove(original.sha256());
                } catch (RuntimeException e) {
                    LOG.error(
                            "The object {} is erased here and could not be removed from the store: {}",
                            ObjectStore.name(original.sha256()),
                            e.getMessage());
                }
            }
        }
    }
}
