package org.voltdocket.support;

import java.io.File;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;

/** The whole server in a process of its own, on a database that a test may kill; its uploads on a small disk where the system lets it. */
public final class Node implements AutoCloseable {

    public static final String ADMIN = "first-admin";

    /** Size of the disk for uploads. */
    private static final String DISK = "24m";

    private static final AtomicInteger STARTS = new AtomicInteger();

    private final OwnDatabase database;
    private final Path folder;
    private final boolean smallDisk;
    private final int port;
    private final int managementPort;
    private final List<String> options;
    private final Map<String, String> environment;
    private Process process;
    private Path log;

    public Node(OwnDatabase database, Path folder) throws Exception {
        this(database, folder, List.of(), Map.of());
    }

    /** With options and variables of its environment besides. */
    public Node(OwnDatabase database, Path folder, List<String> options, Map<String, String> environment)
            throws Exception {
        this(database, folder, options, environment, true);
    }

    /** With the disk of the system for its uploads. */
    public static Node withRoomForUploads(OwnDatabase database, Path folder) throws Exception {
        return new Node(database, folder, List.of(), Map.of(), false);
    }

    private Node(
            OwnDatabase database,
            Path folder,
            List<String> options,
            Map<String, String> environment,
            boolean diskOfItsOwn)
            throws Exception {
        this.database = database;
        this.options = options;
        this.environment = environment;
        this.folder = Files.createDirectories(folder.resolve("uploads")).getParent();
        this.smallDisk = diskOfItsOwn && mounts(folder.resolve("uploads"));
        try (ServerSocket free = new ServerSocket(0);
                ServerSocket another = new ServerSocket(0)) {
            this.port = free.getLocalPort();
            this.managementPort = another.getLocalPort();
        }
        start();
    }

    private static boolean mounts(Path at) throws Exception {
        if (!Files.isExecutable(Path.of("/usr/bin/unshare"))) {
            return false;
        }
        Process tried = new ProcessBuilder("unshare", "-r", "-m", "sh", "-c", "mount -t tmpfs -o size=1m none " + at)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return tried.waitFor(10, TimeUnit.SECONDS) && tried.exitValue() == 0;
    }

    public boolean hasSmallDisk() {
        return smallDisk;
    }

    /** The folder for uploads as this process sees it. */
    public Path uploads() {
        return Path.of(
                "/proc",
                Long.toString(process.pid()),
                "root",
                folder.resolve("uploads").toString());
    }

    /** Where it listens. */
    public String url() {
        return "http://localhost:" + port;
    }

    public Client client() {
        return new Client("http://localhost:" + port);
    }

    /** Health and metrics. */
    public Client management() {
        return new Client("http://localhost:" + managementPort);
    }

    /** Starts it and waits until it is ready. */
    public void start() throws Exception {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:TieredStopAtLevel=1",
                "-Djava.io.tmpdir=" + folder.resolve("uploads"),
                "-cp",
                programOnly(),
                "org.voltdocket.Voltdocket",
                "--server.port=" + port,
                "--management.server.port=" + managementPort,
                "--spring.datasource.url=" + database.url(),
                "--spring.flyway.user=postgres",
                "--spring.flyway.password=",
                "--spring.datasource.username=" + TestDatabase.SERVER,
                "--spring.datasource.password=",
                "--spring.datasource.hikari.connection-timeout=1000",
                "--voltdocket.disk.reserve=2MB",
                "--voltdocket.quota.uploads-per-day=1000000",
                "--voltdocket.evidence.items-per-case=5000",
                "--voltdocket.admin.user=" + ADMIN,
                "--voltdocket.admin.password=" + Server.PASSWORD));
        java.addAll(options);
        List<String> command = smallDisk
                ? List.of(
                        "unshare",
                        "-r",
                        "-m",
                        "sh",
                        "-c",
                        "mount -t tmpfs -o size=" + DISK + " none " + folder.resolve("uploads") + " && exec \"$@\"",
                        "node")
                : List.of();
        List<String> all = new ArrayList<>(command);
        all.addAll(java);
        String name = "node-" + ProcessHandle.current().pid() + "-" + STARTS.incrementAndGet() + ".log";
        log = Path.of("target", name);
        ProcessBuilder builder =
                new ProcessBuilder(all).redirectErrorStream(true).redirectOutput(log.toFile());
        builder.environment().putAll(environment);
        process = builder.start();
        long until = System.nanoTime() + Duration.ofSeconds(180).toNanos();
        while (!Files.readString(log()).contains("Voltdocket is ready")) {
            if (!process.isAlive() || System.nanoTime() > until) {
                throw new AssertionError(Files.readString(log()));
            }
            Thread.sleep(100);
        }
    }

    /** What a command of the program said, and how it ended. */
    public record Said(int code, String text) {}

    /** Runs the program with one of its commands to its end, on the same database and with the same settings. */
    public Said command(String... arguments) throws Exception {
        return command(database, options, environment, arguments);
    }

    /** The same without a node. */
    public static Said command(
            OwnDatabase database, List<String> options, Map<String, String> environment, String... arguments)
            throws Exception {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                programOnly(),
                "org.voltdocket.Voltdocket",
                "--spring.datasource.url=" + database.url(),
                "--spring.flyway.user=postgres",
                "--spring.flyway.password=",
                "--spring.datasource.username=" + TestDatabase.SERVER,
                "--spring.datasource.password="));
        java.addAll(options);
        java.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(java).redirectErrorStream(true);
        builder.environment().putAll(environment);
        Process command = builder.start();
        String text = new String(command.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Said(command.waitFor(), text);
    }

    /** Ends it without a word. */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** What the running process says; kept where the build leaves its other reports. */
    public Path log() {
        return log;
    }

    /** The class path without the tests' own classes. */
    public static String programOnly() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.endsWith("test-classes") && !entry.endsWith("test-classes/"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    @Override
    public void close() throws Exception {
        process.destroy();
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            kill();
        }
    }
}
