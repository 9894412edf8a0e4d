package org.voltdocket.evidence.original;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.kernel.Sha256;

/** Original bytes in the database, in pieces, each deflated where that is worth it. */
final class OriginalFileChunks {

    private final JdbcClient jdbc;

    OriginalFileChunks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Takes one piece after the other. */
    interface Taker {
        void take(byte[] piece) throws IOException;
    }

    void keep(Sha256 sha256, Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            int seq = 0;
            for (byte[] piece = next(in); piece.length > 0; piece = next(in)) {
                byte[] less = OriginalFileChunk.deflate(piece);
                boolean worthIt = less.length < piece.length - piece.length / 16;
                jdbc.sql("insert into raw_chunk (sha256, seq, data, deflated) values (?, ?, ?, ?)")
                        .param(sha256.hex())
                        .param(seq++)
                        .param(worthIt ? less : piece)
                        .param(worthIt)
                        .update();
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
        for (int seq = 0; seq < pieces; seq++) {
            taker.take(jdbc.sql("select data, deflated from raw_chunk where sha256 = ? and seq = ?")
                    .param(sha256.hex())
                    .param(seq)
                    .query((row, n) -> row.getBoolean(2) ? OriginalFileChunk.inflate(row.getBytes(1)) : row.getBytes(1))
                    .single());
        }
    }
}
