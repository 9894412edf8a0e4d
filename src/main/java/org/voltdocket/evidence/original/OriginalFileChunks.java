package org.voltdocket.evidence.original;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.crypto.SecretKey;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.kernel.Sha256;

/** Original bytes in the database, in pieces, each deflated where that is worth it and encrypted if the configuration has a key. */
final class OriginalFileChunks {

    private final JdbcClient jdbc;
    private final OriginalKeys keys;

    OriginalFileChunks(JdbcClient jdbc, OriginalKeys keys) {
        this.jdbc = jdbc;
        this.keys = keys;
    }

    /** Takes one piece after the other. */
    interface Taker {
        void take(byte[] piece) throws IOException;
    }

    void keep(Sha256 sha256, Path file) throws IOException {
        Optional<SecretKey> key = keys.create(sha256);
        try (InputStream in = Files.newInputStream(file)) {
            int seq = 0;
            for (byte[] piece = next(in); piece.length > 0; piece = next(in)) {
                byte[] less = OriginalFileChunk.deflate(piece);
                boolean worthIt = less.length < piece.length - piece.length / 16;
                byte[] data = worthIt ? less : piece;
                jdbc.sql("insert into raw_chunk (sha256, seq, data, deflated, encrypted) values (?, ?, ?, ?, ?)")
                        .param(sha256.hex())
                        .param(seq)
                        .param(key.isPresent() ? OriginalKeys.encrypt(key.get(), sha256, seq, data) : data)
                        .param(worthIt)
                        .param(key.isPresent())
                        .update();
                seq++;
            }
        }
    }

    static byte[] next(InputStream in) throws IOException {
        return in.readNBytes(OriginalFileChunk.MOST);
    }

    void each(Sha256 sha256, Taker taker) throws IOException {
        int pieces = jdbc.sql("select count(*) from raw_chunk where sha256 = ?")
                .param(sha256.hex())
                .query(Integer.class)
                .single();
        SecretKey key = null;
        for (int seq = 0; seq < pieces; seq++) {
            Chunk chunk = jdbc.sql("select data, deflated, encrypted from raw_chunk where sha256 = ? and seq = ?")
                    .param(sha256.hex())
                    .param(seq)
                    .query((row, n) -> new Chunk(row.getBytes(1), row.getBoolean(2), row.getBoolean(3)))
                    .single();
            byte[] data = chunk.data();
            if (chunk.encrypted()) {
                key = key == null ? keys.find(sha256) : key;
                data = OriginalKeys.decrypt(key, sha256, seq, data);
            }
            taker.take(chunk.deflated() ? OriginalFileChunk.inflate(data) : data);
        }
    }

    private record Chunk(byte[] data, boolean deflated, boolean encrypted) {}
}
