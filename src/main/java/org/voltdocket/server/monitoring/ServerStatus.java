package org.voltdocket.server.monitoring;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.voltdocket.server.limits.DiskReserve.Disk;

/**
 * What an administrator looks at.
 *
 * @param due cases whose last change is not judged
 * @param dueFailed of these, the ones that could not be
 * @param dueSince the oldest of them
 * @param tasksWaiting durable tasks whose time has come and that nobody works on
 * @param tasksAtWork durable tasks under way on any node
 * @param mailWaiting letters and notices not sent yet
 * @param mailFailed those that were given up
 * @param refusals files refused since midnight UTC, by reason, most first
 * @param slow slowest pages and calls of this node in the last hour
 * @param disks disks that this node writes to
 * @param databaseBytes size of the database
 * @param store of original files, where one is named
 * @param backup the last one that was marked, and the last one whose restore was tested
 */
public record ServerStatus(
        int due,
        int dueFailed,
        Optional<Instant> dueSince,
        int tasksWaiting,
        int tasksAtWork,
        int mailWaiting,
        int mailFailed,
        List<Count> refusals,
        List<Slow> slow,
        List<Disk> disks,
        long databaseBytes,
        Optional<Store> store,
        Backups backup,
        Heap heap) {

    /** So many of something. */
    public record Count(String what, int count) {}

    /** A route: how often it was asked, and in how many ms 95 of 100 and the slowest were answered. */
    public record Slow(String method, String route, long count, double p95Ms, double mostMs) {}

    /**
     * The store that keeps new original files.
     *
     * @param trouble what it, or the way to it, said just now; null where it answers
     */
    public record Store(String where, String trouble) {}

    /** A backup as its command marked it. */
    public record Backup(Instant takenAt, String file, long bytes) {}

    /** A backup that was restored and verified as its command marked it. */
    public record TestedRestore(Instant testedAt, String file, int seconds) {}

    /**
     * Backups.
     *
     * @param overdue whether no restore was tested in the last month
     */
    public record Backups(Optional<Backup> taken, Optional<TestedRestore> tested, boolean overdue) {}

    /** Memory of this node. */
    public record Heap(long usedBytes, long mostBytes) {}
}
