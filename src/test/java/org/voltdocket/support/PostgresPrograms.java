package org.voltdocket.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** PostgreSQL as the system's own packages install it: server and programs of one version in one folder. */
public final class PostgresPrograms {

    private static final List<String> NEEDED =
            List.of("initdb", "postgres", "pg_dump", "pg_restore", "pg_basebackup", "psql");

    /** What the schema needs: earlier ones know no {@code is json}. */
    private static final int OLDEST = 16;

    private final Path folder;

    private PostgresPrograms(Path folder) {
        this.folder = folder;
    }

    /** The latest of version 16 or newer that is there whole: in the path, or where Debian's packages put it. */
    public static Optional<PostgresPrograms> installed() throws IOException {
        List<Path> folders = new ArrayList<>();
        for (String folder : System.getenv("PATH").split(":")) {
            folders.add(Path.of(folder));
        }
        Path debian = Path.of("/usr/lib/postgresql");
        if (Files.isDirectory(debian)) {
            try (Stream<Path> versions = Files.list(debian)) {
                versions.forEach(version -> folders.add(version.resolve("bin")));
            }
        }
        List<PostgresPrograms> whole = new ArrayList<>();
        for (Path folder : folders) {
            if (NEEDED.stream().allMatch(name -> Files.isExecutable(folder.resolve(name)))) {
                whole.add(new PostgresPrograms(folder));
            }
        }
        return whole.stream().filter(one -> one.major() >= OLDEST).max(Comparator.comparing(PostgresPrograms::major));
    }

    /** The major version, such as 17. */
    public int major() {
        try {
            return Integer.parseInt(run("pg_dump", "--version").replaceAll("(?s)[^)]*\\) (\\d+).*", "$1"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Runs one of them to its end; fails with what it said where it failed. */
    public String run(String program, String... arguments) throws IOException {
        Process process = process(program, arguments).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(ended(process, Duration.ofMinutes(2))).as(said).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        return said;
    }

    private static boolean ended(Process process, Duration within) {
        try {
            return process.waitFor(within.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The folder of the programs. */
    public Path folder() {
        return folder;
    }

    /**
     * A database server at that port; its folder is made where it is not there. Durable, by password of nobody.
     *
     * @param settings more settings, such as {@code archive_mode=on}
     */
    Process serve(Path data, int port, Path log, List<String> settings) throws IOException {
        if (!Files.exists(data.resolve("PG_VERSION"))) {
            run("initdb", "-D", data.toString(), "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8");
        }
        List<String> arguments = new ArrayList<>(List.of(
                "-D",
                data.toString(),
                "-p",
                Integer.toString(port),
                "-c",
                "listen_addresses=127.0.0.1",
                "-c",
                "unix_socket_directories="));
        settings.forEach(setting -> arguments.addAll(List.of("-c", setting)));
        Process server = process("postgres", arguments.toArray(String[]::new))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
        if (ended(server, Duration.ofMillis(200))) {
            throw new IOException(Files.readString(log));
        }
        return server;
    }

    /** PostgreSQL does not run as root; in a name space of its own the same user is not root. */
    private ProcessBuilder process(String program, String... arguments) {
        List<String> command = new ArrayList<>();
        if ("root".equals(System.getProperty("user.name"))) {
            command.addAll(List.of("unshare", "-U"));
        }
        command.add(folder.resolve(program).toString());
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command);
    }
}
