package org.voltdocket.demo.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Base64;
import org.voltdocket.server.startup.StartupException;

/**
 * The directory of the demo's data. A file lock reserves it for one server; the lock ends with the process. Only the owner
 * can read it.
 */
class DataDirectory implements AutoCloseable {

    /** Raised when the migrations are rewritten; the content of {@code database-made}, which older builds left empty. */
    private static final String SCHEMA = "3";

    private final Path root;
    private final FileChannel channel;
    private final FileLock lock;

    private DataDirectory(Path root, FileChannel channel, FileLock lock) {
        this.root = root;
        this.channel = channel;
        this.lock = lock;
    }

    /**
     * Creates the directory if it is missing, and locks it.
     *
     * @throws StartupException if another server holds the lock, or the directory cannot be written
     */
    static DataDirectory take(Path where) {
        Path root = where.toAbsolutePath().normalize();
        try {
            folder(root);
            FileChannel channel =
                    FileChannel.open(root.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = tryLock(channel);
            if (lock == null) {
                channel.close();
                throw new StartupException(
                        "The data directory " + root + " is in use by another running Voltdocket.",
                        "Use that one, stop it, or start in another folder (--voltdocket.data=…).");
            }
            DataDirectory directory = new DataDirectory(root, channel, lock);
            if (directory.isOfOlderBuild()) {
                directory.close();
                throw new StartupException(
                        "The data directory " + root
                                + " was created by an older build of Voltdocket, whose database this"
                                + " build cannot read; it was left untouched.",
                        "Move it away, or start in another folder (--voltdocket.data=…).");
            }
            return directory;
        } catch (IOException e) {
            throw new StartupException(
                    "The data directory " + root + " cannot be written: " + e,
                    "Start in a folder that this user may write to, or name one: --voltdocket.data=…",
                    e);
        }
    }

    private static FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null; // held by this process
        }
    }

    Path root() {
        return root;
    }

    /** Directory of PostgreSQL's files. */
    Path database() {
        return root.resolve("database");
    }

    /** Directory that PostgreSQL's programs are unpacked to. */
    Path programs() throws IOException {
        return folder(root.resolve("programs"));
    }

    /** The file with the database's password, created at the first call. */
    Path passwordFile() throws IOException {
        Path file = root.resolve("database-password");
        if (!Files.exists(file)) {
            byte[] secret = new byte[24];
            new SecureRandom().nextBytes(secret);
            Files.createFile(file, ownerOnly("rw-------"));
            Files.writeString(file, Base64.getUrlEncoder().withoutPadding().encodeToString(secret));
        }
        return file;
    }

    /** Renames the database directory of a first start that did not finish; deletes nothing. */
    void putAsideUnfinished() throws IOException {
        if (Files.exists(database()) && !Files.exists(finishedMark())) {
            Files.move(
                    database(),
                    root.resolve("database-unfinished-" + Instant.now().toEpochMilli()));
        }
    }

    /** Records that the database has started once, and the schema of this build. */
    void markFinished() throws IOException {
        Files.writeString(finishedMark(), SCHEMA);
    }

    private boolean isOfOlderBuild() throws IOException {
        return Files.exists(finishedMark()) && !Files.readString(finishedMark()).equals(SCHEMA);
    }

    private Path finishedMark() {
        return root.resolve("database-made");
    }

    private static Path folder(Path path) throws IOException {
        if (!Files.isDirectory(path)) {
            Files.createDirectories(path, ownerOnly("rwx------"));
        }
        return path;
    }

    private static FileAttribute<?>[] ownerOnly(String permissions) {
        if (!FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            return new FileAttribute<?>[0];
        }
        return new FileAttribute<?>[] {
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
        };
    }

    @Override
    public void close() throws IOException {
        lock.release();
        channel.close();
    }
}
