package org.voltdocket.server;

import java.io.File;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.voltdocket.support.Client;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.Server;

/** The server in a process of its own with a heap of 512 MiB, as it is run for real. */
final class BenchServer implements AutoCloseable {

    static final String ADMIN = "first-admin";

    private final OwnDatabase database;
    private final Path folder;
    private final int port;
    private final int managementPort;
    private final Client health;
    private Process process;
    private double readyS;

    BenchServer(OwnDatabase database, Path folder) throws Exception {
        this.database = database;
        this.folder = Files.createDirectories(folder);
        try (ServerSocket free = new ServerSocket(0);
                ServerSocket another = new ServerSocket(0)) {
            this.port = free.getLocalPort();
            this.managementPort = another.getLocalPort();
        }
        this.health = new Client("http://localhost:" + managementPort);
        start();
    }

    /** Seconds from the start of the process until it answers. */
    double readyS() {
        return readyS;
    }

    int port() {
        return port;
    }

    /** Health and metrics. */
    Client management() {
        return health;
    }

    Client client() {
        return new Client("http://localhost:" + port);
    }

    void again() throws Exception {
        close();
        start();
    }

    private void start() throws Exception {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-Djava.awt.headless=true"));
        // such as -XX:StartFlightRecording=filename=target/bench/server.jfr,settings=profile
        java.addAll(Arrays.asList(System.getenv().getOrDefault("BENCH_JVM", "").split(" +")));
        java.removeIf(String::isBlank);
        // the packaged server instead of the class path
        String jar = System.getenv("BENCH_JAR");
        java.addAll(
                jar == null ? List.of("-cp", programOnly(), "org.voltdocket.Voltdocket") : List.of("-jar", jar));
        java.addAll(List.of(
                "--server.port=" + port,
                "--management.server.port=" + managementPort,
                "--spring.datasource.url=" + database.url(),
                "--spring.datasource.username=postgres",
                "--spring.datasource.password=",
                "--voltdocket.quota.uploads-per-day=1000000",
                "--voltdocket.quota.bytes-per-day=1TB",
                "--voltdocket.quota.assessments-per-day=1000000",
                "--voltdocket.admin.user=" + ADMIN,
                "--voltdocket.admin.password=" + Server.PASSWORD));
        Path log = folder.resolve("server.log");
        long from = System.nanoTime();
        process = new ProcessBuilder(java)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        while (!answers()) {
            if (!process.isAlive() || System.nanoTime() - from > Duration.ofSeconds(240).toNanos()) {
                throw new IllegalStateException(Files.readString(log));
            }
            Thread.sleep(20);
        }
        readyS = (System.nanoTime() - from) / 1e9;
    }

    private boolean answers() {
        try {
            return health.get("/actuator/health/readiness").status() == 200;
        } catch (RuntimeException e) {
            return false; // not yet
        }
    }

    /** Processor time that the process has had, ms. */
    double cpuMs() {
        return process.info().totalCpuDuration().orElse(Duration.ZERO).toNanos() / 1e6;
    }

    /** Most memory that the process ever had, MB; where the system tells it. */
    String peakMb() throws IOException {
        return Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
                .filter(line -> line.startsWith("VmHWM:"))
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024 + "")
                .findFirst()
                .orElse("?");
    }

    private static String programOnly() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.endsWith("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    @Override
    public void close() throws Exception {
        process.destroy();
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
        }
    }
}
