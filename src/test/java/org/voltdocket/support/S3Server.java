package org.voltdocket.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A server of the S3 protocol in a process of its own (S3Proxy), that a test may stop, kill and look into. */
public final class S3Server implements AutoCloseable {

    public static final String BUCKET = "originals-of-a-test";
    public static final String KEY = "test-only-key";
    public static final String SECRET = "test-only-secret";

    /** Put there by the build before the tests run. */
    private static final Path PROGRAM = Path.of("target", "s3proxy", "s3proxy.jar");

    private final Path folder;
    private final int port;
    private Process process;

    public S3Server(Path folder) throws Exception {
        this.folder = folder;
        Files.createDirectories(folder.resolve("objects").resolve(BUCKET));
        assertThat(PROGRAM).as("mvn process-test-classes puts it there").exists();
        try (ServerSocket free = new ServerSocket(0)) {
            this.port = free.getLocalPort();
        }
        start();
    }

    public String endpoint() {
        return "http://127.0.0.1:" + port;
    }

    /** What a {@link Node} is told to use it. */
    public List<String> options() {
        return List.of("--voltdocket.raw.endpoint=" + endpoint(), "--voltdocket.raw.bucket=" + BUCKET);
    }

    public static Map<String, String> environment() {
        return Map.of("VOLTDOCKET_RAW_KEY", KEY, "VOLTDOCKET_RAW_SECRET", SECRET);
    }

    public void start() throws Exception {
        Path settings = folder.resolve("s3proxy.properties");
        Files.writeString(
                settings,
                String.join(
                        "\n",
                        "s3proxy.endpoint=" + endpoint(),
                        "s3proxy.authorization=aws-v4",
                        "s3proxy.identity=" + KEY,
                        "s3proxy.credential=" + SECRET,
                        "jclouds.provider=filesystem",
                        "jclouds.filesystem.basedir=" + folder.resolve("objects")));
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m", // it holds a file whole to verify its signature
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-jar",
                        PROGRAM.toString(),
                        "--properties",
                        settings.toString())
                .redirectErrorStream(true)
                .redirectOutput(log().toFile())
                .start();
        People.await(this::answers);
    }

    private static Path log() {
        return Path.of("target", "s3proxy-" + ProcessHandle.current().pid() + ".log");
    }

    private boolean answers() {
        assertThat(process.isAlive()).as(log().toString()).isTrue();
        try {
            HttpURLConnection asked =
                    (HttpURLConnection) URI.create(endpoint()).toURL().openConnection();
            return asked.getResponseCode() > 0;
        } catch (IOException e) {
            return false;
        }
    }

    /** Takes connections and answers nothing, until {@link #goOn}. */
    public void stall() throws Exception {
        signal("STOP");
    }

    public void goOn() throws Exception {
        signal("CONT");
    }

    private void signal(String name) throws Exception {
        assertThat(new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                        .start()
                        .waitFor())
                .isZero();
    }

    /** Ends it without a word. */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** The files behind its objects. */
    public List<Path> objects() throws IOException {
        try (Stream<Path> all = Files.walk(folder.resolve("objects").resolve(BUCKET))) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** The file behind the object of that name. */
    public Path object(String name) {
        return folder.resolve("objects").resolve(BUCKET).resolve(name);
    }

    @Override
    public void close() throws Exception {
        signal("CONT");
        kill();
    }
}
