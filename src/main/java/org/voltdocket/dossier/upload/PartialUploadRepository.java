package org.voltdocket.dossier.upload;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.Enumeration;
import java.util.Iterator;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;

/** Tables {@code partial_upload} and {@code partial_upload_block}. */
@Repository
class PartialUploadRepository {

    private final JdbcClient db;

    PartialUploadRepository(JdbcClient db) {
        this.db = db;
    }

    void create(PartialUpload upload) {
        db.sql("insert into partial_upload (id, case_id, account, file_name, note, bytes, sha256, expires_at)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?)")
                .param(upload.id())
                .param(upload.caseId())
                .param(upload.account())
                .param(upload.fileName())
                .param(upload.note())
                .param(upload.bytes())
                .param(upload.sha256())
                .param(Timestamp.from(upload.expiresAt()))
                .update();
    }

    /** Uploads of an account that are not evidence yet. */
    int open(String account) {
        return db.sql("select count(*) from partial_upload where account = ? and evidence_id is null")
                .param(account)
                .query(Integer.class)
                .single();
    }

    Optional<PartialUpload> find(UUID id, String account) {
        return db.sql("select * from partial_upload where id = ? and account = ?")
                .param(id)
                .param(account)
                .query(PartialUploadRepository::row)
                .optional();
    }

    /**
     * Appends a block, in one transaction with the count of bytes received.
     *
     * @return false if the upload has not exactly {@code start} bytes; nothing was written then
     */
    @Transactional
    public boolean append(UUID id, long start, byte[] data) {
        int updated = db.sql("update partial_upload set received = received + ?"
                        + " where id = ? and received = ? and evidence_id is null")
                .param(data.length)
                .param(id)
                .param(start)
                .update();
        if (updated == 0) {
            return false;
        }
        db.sql("insert into partial_upload_block (upload_id, start, data) values (?, ?, ?)")
                .param(id)
                .param(start)
                .param(data)
                .update();
        return true;
    }

    /** The bytes received, read block by block. */
    InputStream content(UUID id) {
        Iterator<Long> starts = db.sql("select start from partial_upload_block where upload_id = ? order by start")
                .param(id)
                .query(Long.class)
                .list()
                .iterator();
        return new SequenceInputStream(new Enumeration<>() {
            @Override
            public boolean hasMoreElements() {
                return starts.hasNext();
            }

            @Override
            public InputStream nextElement() {
                return new ByteArrayInputStream(block(id, starts.next()));
            }
        });
    }

    private byte[] block(UUID id, long start) {
        return db.sql("select data from partial_upload_block where upload_id = ? and start = ?")
                .param(id)
                .param(start)
                .query(byte[].class)
                .single();
    }

    /** Marks an upload as evidence and deletes its bytes. */
    @Transactional
    public void finish(UUID id, UUID evidenceId) {
        db.sql("update partial_upload set evidence_id = ? where id = ?")
                .param(evidenceId)
                .param(id)
                .update();
        db.sql("delete from partial_upload_block where upload_id = ?").param(id).update();
    }

    void delete(UUID id) {
        db.sql("delete from partial_upload where id = ?").param(id).update();
    }

    /** @return how many were deleted */
    int deleteExpired(Instant now) {
        return db.sql("delete from partial_upload where expires_at < ?")
                .param(Timestamp.from(now))
                .update();
    }

    private static PartialUpload row(ResultSet row, int index) throws SQLException {
        return new PartialUpload(
                row.getObject("id", UUID.class),
                row.getObject("case_id", UUID.class),
                row.getString("account"),
                row.getString("file_name"),
                row.getString("note"),
                row.getLong("bytes"),
                row.getLong("received"),
                row.getString("sha256"),
                row.getObject("evidence_id", UUID.class),
                row.getTimestamp("expires_at").toInstant());
    }
}
