package org.voltdocket.evidence.original;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;

/**
 * Original files, stored once per digest, in the database or, if one is configured, in the object store. Each row says where
 * its file is.
 */
@Component
public class OriginalFileStore {

    private final JdbcClient jdbc;
    private final OriginalFileChunks pieces;
    private final Optional<ObjectStore> store;

    @Autowired
    OriginalFileStore(JdbcClient jdbc, ObjectStoreConfiguration named, OriginalKeys keys) {
        this(jdbc, named.get(), keys);
    }

    OriginalFileStore(JdbcClient jdbc, Optional<ObjectStore> store, OriginalKeys keys) {
        this.jdbc = jdbc;
        this.pieces = new OriginalFileChunks(jdbc, keys);
        this.store = store;
    }

    /** Where the bytes of a file are, or will be. */
    public enum Place {
        DATABASE,
        STORE,
        ERASED;

        String id() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    private record Noted(Place place, long bytes) {}

    /**
     * Uploads a file to the object store, if there is one and it is not stored yet. Call it before the transaction, so that no
     * database connection waits for the store. An object without a row does no harm: the same file again is the
     * same object, and {@code --verify-evidence} lists it.
     *
     * @return where the file is stored
     * @throws org.voltdocket.evidence.original.ObjectStoreUnavailableException if the store does not accept it
     */
    public Place bring(Sha256 sha256, Path file) {
        if (store.isEmpty()) {
            return Place.DATABASE;
        }
        Optional<Noted> known = noted(sha256);
        if (known.isPresent() && known.get().place() != Place.ERASED) {
            return known.get().place();
        }
        store.get().put(sha256, file);
        return Place.STORE;
    }

    /**
     * Stores a file in the caller's transaction; waits for a concurrent transaction that stores the same bytes.
     *
     * @param place as {@link #bring} said
     */
    public void keep(Sha256 sha256, Path file, long bytes, Place place) {
        int added = jdbc.sql("insert into raw_file (sha256, bytes, place) values (?, ?, ?) on conflict do nothing")
                .param(sha256.hex())
                .param(bytes)
                .param(place.id())
                .update();
        boolean erased = added == 0 && noted(sha256).orElseThrow().place() == Place.ERASED;
        if (erased) {
            jdbc.sql("select store_erased_original_again(?, ?)")
                    .param(sha256.hex())
                    .param(place.id())
                    .query(rs -> {});
        }
        if (added == 0 && !erased || place == Place.STORE) {
            return;
        }
        try {
            pieces.keep(sha256, file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes the bytes; the last piece only if digest and length are correct, so that a damaged file never looks complete.
     *
     * @throws IllegalStateException if they are not
     * @throws org.voltdocket.evidence.original.ObjectStoreUnavailableException if they are in the store, and it does not answer
     */
    public void write(Sha256 sha256, OutputStream to) {
        Noted noted =
                noted(sha256).orElseThrow(() -> new IllegalStateException("No original is kept under " + sha256 + "."));
        if (noted.place() == Place.ERASED) {
            throw RequestException.of(410, "original-erased", "The original " + sha256 + " was erased.");
        }
        DigestVerifyingOutputStream whole = new DigestVerifyingOutputStream(to);
        try {
            if (noted.place() == Place.STORE) {
                fromStore(sha256, whole);
                whole.end(
                        sha256,
                        noted.bytes(),
                        "the object " + ObjectStore.name(sha256)
                                + " was changed or damaged in the store. Bring it back from the store's own backup or versions.");
            } else {
                pieces.each(sha256, whole::take);
                whole.end(sha256, noted.bytes(), "the database was changed or damaged. Restore it from a backup.");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void fromStore(Sha256 sha256, DigestVerifyingOutputStream whole) throws IOException {
        ObjectStore from = store.orElseThrow(ObjectStoreUnavailableException::notNamed);
        try (InputStream in = from.open(sha256)) {
            for (byte[] piece = next(from, in); piece.length > 0; piece = next(from, in)) {
                whole.take(piece);
            }
        }
    }

    private static byte[] next(ObjectStore from, InputStream in) {
        try {
            return OriginalFileChunks.next(in);
        } catch (IOException e) {
            throw from.brokeOff(e);
        }
    }

    private Optional<Noted> noted(Sha256 sha256) {
        return jdbc.sql("select place, bytes from raw_file where sha256 = ?")
                .param(sha256.hex())
                .query((row, n) ->
                        new Noted(Place.valueOf(row.getString(1).toUpperCase(java.util.Locale.ROOT)), row.getLong(2)))
                .optional();
    }

    /** Stops a server that could not read its files at start. */
    void requireStore() {
        boolean used = jdbc.sql("select exists (select 1 from raw_file where place = 'store')")
                .query(Boolean.class)
                .single();
        if (used && store.isEmpty()) {
            throw new InvalidStoreSettingsException(
                    "Original files of this archive are in a store of objects, and none is named.",
                    "Set VOLTDOCKET_RAW_BUCKET and the other settings of the store; see /manual/running.");
        }
    }
}
