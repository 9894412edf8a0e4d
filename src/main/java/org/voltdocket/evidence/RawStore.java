package org.voltdocket.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/** Keeps original bytes, once for each digest. */
@Component
class RawStore {

    private static final int CHUNK = RawChunk.MOST;

    private final JdbcClient jdbc;

    RawStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps a file in the caller's transaction; waits for another that keeps the same bytes just now. */
    void keep(Sha256 sha256, Path file, long bytes) {
        int added = jdbc.sql("insert into raw_file (sha256, bytes) values (?, ?) on conflict do nothing")
                .param(sha256.hex())
                .param(bytes)
                .update();
        if (added == 0) {
            return;
        }
        try (InputStream in = Files.newInputStream(file)) {
            int seq = 0;
            for (byte[] chunk = in.readNBytes(CHUNK); chunk.length > 0; chunk = in.readNBytes(CHUNK)) {
                byte[] less = RawChunk.deflate(chunk);
                boolean worthIt = less.length < chunk.length - chunk.length / 16;
                jdbc.sql("insert into raw_chunk (sha256, seq, data, deflated) values (?, ?, ?, ?)")
                        .param(sha256.hex())
                        .param(seq++)
                        .param(worthIt ? less : chunk)
                        .param(worthIt)
                        .update();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes the bytes; the last chunk only if the digest holds, so that a reader never takes a damaged file for whole.
     *
     * @throws IllegalStateException if it does not hold
     */
    void write(Sha256 sha256, OutputStream to) {
        MessageDigest digest = Sha256.digest();
        int chunks = jdbc.sql("select count(*) from raw_chunk where sha256 = ?")
                .param(sha256.hex())
                .query(Integer.class)
                .single();
        try {
            for (int seq = 0; seq < chunks; seq++) {
                byte[] chunk = jdbc.sql("select data, deflated from raw_chunk where sha256 = ? and seq = ?")
                        .param(sha256.hex())
                        .param(seq)
                        .query((row, n) -> row.getBoolean(2) ? RawChunk.inflate(row.getBytes(1)) : row.getBytes(1))
                        .single();
                digest.update(chunk);
                if (seq == chunks - 1 && !Sha256.wrap(digest.digest()).equals(sha256)) {
                    break;
                }
                to.write(chunk);
                if (seq == chunks - 1) {
                    return;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        throw new IllegalStateException("The bytes kept under " + sha256
                + " no longer give this digest: the database was changed or damaged. Restore it from a backup.");
    }
}
