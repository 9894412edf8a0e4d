package org.voltdocket.server.startup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import org.springframework.util.FileSystemUtils;

/**
 * Gives the process a directory of its own for temporary files and removes those of processes that were killed.
 *
 * <p>A lock file beside each directory tells whether its process still runs, so servers may share a machine.
 */
public final class TemporaryDirectory {

    private static final String PREFIX = "voltdocket-";
    private static final String LOCK = ".lock";

    /** Holds the lock until the process ends. */
    private static FileChannel held;

    private TemporaryDirectory() {}

    /** Sets {@code java.io.tmpdir}; to be called before anything uses it. */
    public static synchronized void claim() {
        try {
            Path parent = Path.of(System.getProperty("java.io.tmpdir"));
            removeAbandoned(parent);
            System.setProperty("java.io.tmpdir", create(parent).toString());
        } catch (IOException e) {
            throw new UncheckedIOException("There is no room for temporary files in java.io.tmpdir", e);
        }
    }

    private static Path create(Path parent) throws IOException {
        String name = PREFIX + UUID.randomUUID();
        held = FileChannel.open(parent.resolve(name + LOCK), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        if (held.tryLock() == null) {
            held.close();
            return create(parent); // another start is removing it
        }
        return Files.createDirectory(parent.resolve(name));
    }

    static void removeAbandoned(Path parent) throws IOException {
        try (DirectoryStream<Path> locks = Files.newDirectoryStream(parent, PREFIX + "*" + LOCK)) {
            for (Path lock : locks) {
                try (FileChannel channel = FileChannel.open(lock, StandardOpenOption.WRITE)) {
                    if (channel.tryLock() != null) {
                        String name = lock.getFileName().toString();
                        FileSystemUtils.deleteRecursively(
                                parent.resolve(name.substring(0, name.length() - LOCK.length())));
                        Files.deleteIfExists(lock);
                    }
                } catch (IOException | OverlappingFileLockException e) {
                    // belongs to another user, or was removed by another start just now
                }
            }
        }
    }
}
