package org.voltdocket.server;

import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.postgresql.PGConnection;
import org.voltdocket.support.OwnDatabase;

/** What disk, PostgreSQL and memory allow on this machine, without any of the server's own code. */
final class Bounds {

    private static final int MIB = 1 << 20;
    /** Where Debian's packages of PostgreSQL lie, by version. */
    private static final Path PACKAGES = Path.of("/usr/lib/postgresql");

    private final OwnDatabase database;
    private final Path folder;

    Bounds(OwnDatabase database, Path folder) {
        this.database = database;
        this.folder = folder;
    }

    /** MB/s of one file of 128 MiB, written in pieces and forced to the disk at its end. */
    double diskWriteMbS() throws IOException {
        Path file = folder.resolve("bound");
        ByteBuffer piece = noise(MIB);
        long from = System.nanoTime();
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            for (int i = 0; i < 128; i++) {
                out.write(piece.rewind());
            }
            out.force(true);
        }
        double s = (System.nanoTime() - from) / 1e9;
        Files.delete(file);
        return 128 * MIB / 1e6 / s;
    }

    /** 8 KiB appended and forced, as each commit does. */
    Timing force() throws Exception {
        Path file = folder.resolve("bound");
        ByteBuffer page = noise(8192);
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            return Timing.of(10, 200, i -> {
                out.write(page.rewind());
                out.force(false);
            });
        } finally {
            Files.delete(file);
        }
    }

    /** MB/s that COPY takes of the text of recordings into a table of its own. */
    double copyMbS(byte[] csv) throws Exception {
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("create table bound_copy (line text)");
            String text = new String(csv, StandardCharsets.US_ASCII);
            long from = System.nanoTime();
            for (int i = 0; i < 20; i++) {
                connection.unwrap(PGConnection.class).getCopyAPI().copyIn("copy bound_copy from stdin", new StringReader(text));
            }
            double s = (System.nanoTime() - from) / 1e9;
            statement.execute("drop table bound_copy");
            return 20.0 * csv.length / 1e6 / s;
        }
    }

    /** One transaction that inserts so many bytes in so many rows and commits. */
    Timing commit(int bytes, int rows) throws Exception {
        byte[] data = noise(bytes / rows).array();
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute("create table bound_rows (id uuid, n int, data bytea, primary key (id, n))");
            statement.execute("alter table bound_rows alter column data set storage external");
            connection.setAutoCommit(false);
            PreparedStatement insert = connection.prepareStatement("insert into bound_rows values (?, ?, ?)");
            Timing timing = Timing.of(10, 100, i -> {
                UUID id = UUID.randomUUID();
                for (int n = 0; n < rows; n++) {
                    insert.setObject(1, id);
                    insert.setInt(2, n);
                    insert.setBytes(3, data);
                    insert.addBatch();
                }
                insert.executeBatch();
                connection.commit();
            });
            statement.execute("drop table bound_rows");
            connection.commit();
            return timing;
        }
    }

    /** All blocks of one recording, fetched and thrown away. */
    Timing fetch(List<UUID> recordings) throws Exception {
        try (Connection connection = database.connect();
                PreparedStatement select =
                        connection.prepareStatement("select channel, data from recording_block where evidence_id = ?")) {
            return Timing.of(20, 200, i -> {
                select.setObject(1, recordings.get(i % recordings.size()));
                drain(select);
            });
        }
    }

    /** Of one of the two scripts of pgbench: milliseconds a transaction in the mean, and transactions a second. */
    record Pgbench(double ms, double perSecond) {}

    /**
     * What PostgreSQL's own benchmark reaches with a client for each processor, over ten times 100 000 rows for 8 s; empty where
     * the program is not installed.
     *
     * @param script {@code select-only}, or {@code tpcb-like} with a commit that waits for the disk
     */
    Optional<Pgbench> pgbench(String script) throws Exception {
        Optional<Path> program = pgbench();
        if (program.isEmpty()) {
            return Optional.empty();
        }
        String clients = "" + Runtime.getRuntime().availableProcessors();
        run(program.get(), "--initialize", "--quiet", "--scale=10");
        String said = run(program.get(), "--builtin=" + script, "--client=" + clients, "--jobs=" + clients, "--time=8");
        try (Connection connection = database.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "drop table pgbench_accounts, pgbench_branches, pgbench_tellers, pgbench_history");
        }
        return Optional.of(new Pgbench(read(said, "latency average = ([0-9.]+) ms"), read(said, "tps = ([0-9.]+)")));
    }

    private static Optional<Path> pgbench() throws IOException {
        try (Stream<Path> versions = Files.exists(PACKAGES) ? Files.list(PACKAGES) : Stream.empty()) {
            return versions.map(version -> version.resolve("bin/pgbench"))
                    .filter(Files::isExecutable)
                    .max(Comparator.naturalOrder());
        }
    }

    private String run(Path program, String... options) throws Exception {
        List<String> command = new ArrayList<>(List.of(program.toString()));
        command.addAll(List.of(options));
        command.add(database.uri());
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException(said);
        }
        return said;
    }

    private static double read(String said, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(said);
        if (!found.find()) {
            throw new IllegalStateException(said);
        }
        return Double.parseDouble(found.group(1));
    }

    private static void drain(PreparedStatement select) throws SQLException {
        try (ResultSet rows = select.executeQuery()) {
            while (rows.next()) {
                rows.getBytes(2);
            }
        }
    }

    /** GB/s of one copy in memory. */
    static double memoryGbS() {
        byte[] from = new byte[64 * MIB];
        byte[] to = new byte[64 * MIB];
        long start = 0;
        for (int i = 0; i < 20; i++) {
            start = i == 4 ? System.nanoTime() : start; // the first ones warm up
            System.arraycopy(from, 0, to, 0, from.length);
            from[i] = to[i + 1];
        }
        return 16.0 * from.length / (System.nanoTime() - start);
    }

    private static ByteBuffer noise(int bytes) {
        byte[] noise = new byte[bytes];
        new Random(1).nextBytes(noise);
        return ByteBuffer.wrap(noise);
    }
}
