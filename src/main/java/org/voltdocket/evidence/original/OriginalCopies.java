package org.voltdocket.evidence.original;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Sha256;

/** Copies of the objects of the store in a folder, named by their digest, as a backup makes them. */
@Component
public class OriginalCopies {

    private final JdbcClient jdbc;
    private final Optional<ObjectStore> store;

    @Autowired
    OriginalCopies(JdbcClient jdbc, ObjectStoreConfiguration named) {
        this.jdbc = jdbc;
        this.store = named.get();
    }

    /**
     * Copies every original in the store that the folder lacks; each is complete and has the right digest when it has its
     * name.
     *
     * @return the number of files copied
     * @throws IllegalStateException if an object is missing or damaged
     * @throws ObjectStoreUnavailableException if the store does not answer
     */
    public int save(Path folder) {
        int copied = 0;
        try {
            Files.createDirectories(folder);
            for (Sha256 original : originals()) {
                Path file = folder.resolve(original.hex());
                if (!Files.exists(file)) {
                    save(original, file);
                    copied++;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return copied;
    }

    private void save(Sha256 original, Path file) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try (DigestInputStream in = new DigestInputStream(require().open(original), Sha256.digest())) {
            Files.copy(in, part, StandardCopyOption.REPLACE_EXISTING);
            if (!Sha256.wrap(in.getMessageDigest().digest()).equals(original)) {
                throw new IllegalStateException(
                        "The object " + ObjectStore.name(original) + " is damaged in the store.");
            }
        }
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    }

    /**
     * Puts back every original that the store lacks and the folder has.
     *
     * @return the number of objects put back
     * @throws IllegalStateException if a file of the folder is damaged
     */
    public int putBack(Path folder) {
        Set<String> there = new HashSet<>();
        require().eachName(there::addAll);
        int returned = 0;
        for (Sha256 original : originals()) {
            Path file = folder.resolve(original.hex());
            if (!there.contains(ObjectStore.name(original)) && Files.exists(file)) {
                if (!digest(file).equals(original)) {
                    throw new IllegalStateException("The copy " + file + " is damaged.");
                }
                require().put(original, file);
                returned++;
            }
        }
        return returned;
    }

    private static Sha256 digest(Path file) {
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), Sha256.digest())) {
            in.transferTo(java.io.OutputStream.nullOutputStream());
            return Sha256.wrap(((DigestInputStream) in).getMessageDigest().digest());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private java.util.List<Sha256> originals() {
        return jdbc.sql("select sha256 from raw_file where place = 'store' order by sha256")
                .query((row, n) -> new Sha256(row.getString(1)))
                .list();
    }

    private ObjectStore require() {
        return store.orElseThrow(ObjectStoreUnavailableException::notNamed);
    }
}
