package org.voltdocket.server;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.util.FileSystemUtils;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.OwnDatabase;
import tools.jackson.databind.JsonNode;

/**
 * The server in a process of its own with 512 MiB of heap and a durable PostgreSQL: from a recording's upload to its verdict,
 * its series, a run over the archive, and the start; each beside what disk, database and memory allow in the same run. Writes
 * {@code target/bench/server.md}.
 *
 * <p>{@code mvn -q -Pbench test-compile exec:exec -Dbench.main=org.voltdocket.server.ServerBench -Dbench="60 1000 1000000"}: how
 * many recordings are uploaded, how many the run reads, and of how many cases the desk is measured (0: not at all).
 */
public final class ServerBench {

    private static final int WARM_UP = 20;

    private final StringBuilder table = new StringBuilder();
    private final OwnDatabase database;
    private final BenchServer server;
    private final Bounds bounds;
    private Client admin;
    private Client workshop;

    private ServerBench(OwnDatabase database, BenchServer server, Bounds bounds) {
        this.database = database;
        this.server = server;
        this.bounds = bounds;
    }

    public static void main(String[] args) throws Exception {
        int uploads = args.length > 0 ? Integer.parseInt(args[0]) : 60;
        int archive = args.length > 1 ? Integer.parseInt(args[1]) : 1000;
        int desk = args.length > 2 ? Integer.parseInt(args[2]) : 0;
        Path folder = Path.of("target", "bench", "server").toAbsolutePath();
        FileSystemUtils.deleteRecursively(folder);
        Files.createDirectories(folder);
        String load = load();
        try (OwnDatabase database = new OwnDatabase(folder.resolve("pg"));
                BenchServer server = new BenchServer(database, folder)) {
            ServerBench bench = new ServerBench(database, server, new Bounds(database, folder));
            bench.run(uploads, archive);
            bench.write(load);
        }
        if (desk > 0) {
            Class<?> other = Class.forName("org.voltdocket.desk.DeskServiceBench");
            other.getMethod("main", String[].class).invoke(null, (Object) new String[] {"" + desk, "200"});
        }
    }

    private void run(int uploads, int archive) throws Exception {
        List<byte[]> drives = HourDrive.files(WARM_UP + 2 * uploads);
        List<byte[]> later = drives.subList(WARM_UP + uploads, drives.size());
        server.again();
        double startCpu = server.cpuMs() / 1e3;
        BenchPeople people = new BenchPeople(server);
        admin = people.admin();
        workshop = people.workshop("shop");
        double write = bounds.diskWriteMbS();
        Timing force = bounds.force();
        double copy = bounds.copyMbS(drives.get(0));
        line("write 128 MiB and force it, MB/s", "%.0f | |", write);
        line("force 8 KiB, ms", "%s |", force.cells());
        line("COPY of the text, MB/s", "%.0f | |", copy);
        line("copy in memory, GB/s", "%.1f | |", Bounds.memoryGbS());
        for (String script : new String[] {"select-only", "tpcb-like"}) {
            bounds.pgbench(script)
                    .ifPresent(said ->
                            line("pgbench " + script + ", transactions/s", "%.0f | | %.2f ms each", said.perSecond(), said.ms()));
        }
        line("**server ready, warm, s**", "%.1f | |", server.readyS());
        line("processor time until then, s", "%.1f | |", startCpu);
        List<UUID> recordings = upload(drives.subList(0, WARM_UP + uploads));
        series(recordings.get(recordings.size() - 1), bounds.fetch(recordings));
        rerun(new BenchArchive(database).multiply(recordings, archive));
        List<String> cases = open("LATER-", later.size());
        Timing again = Timing.of(0, later.size(), i -> upload(cases.get(i), later.get(i)));
        line("**upload to verdict among " + (recordings.size() + archive) + " recordings, ms**", "%s |", again.cells());
        line("most memory of the process, MB", "%s | |", server.peakMb());
    }

    private List<UUID> upload(List<byte[]> drives) throws Exception {
        List<String> cases = open("FIRST-", drives.size());
        List<UUID> kept = new ArrayList<>();
        double[] cpu = new double[1];
        Timing timing = Timing.of(WARM_UP, drives.size() - WARM_UP, i -> {
            cpu[0] = i == WARM_UP ? server.cpuMs() : cpu[0];
            kept.add(upload(cases.get(i), drives.get(i)));
        });
        double cpuEach = (server.cpuMs() - cpu[0]) / (drives.size() - WARM_UP);
        for (String number : cases) {
            JsonNode shown = workshop.get("/api/v1/cases/" + number).json();
            if (!shown.at("/assessment/leaning").isString()) {
                throw new IllegalStateException("no verdict: " + shown);
            }
        }
        long raw = number("select sum(length(data)) from raw_chunk") / drives.size();
        long columns = number("select sum(length(data)) from recording_block") / drives.size();
        Timing store = bounds.commit((int) (raw + columns), 12);
        Timing judge = judge("2026.1");
        line("insert and commit as many bytes, ms", "%s |", store.cells());
        line("judge alone, ms", "%s |", judge.cells());
        line(
                "**upload of " + drives.get(0).length / 1_000_000.0 + " MB to its verdict, ms**",
                "%s | %.1f × (insert + judge)",
                timing.cells(),
                timing.p50() / (store.p50() + judge.p50()));
        line("processor time of the server for each, ms", "%.0f | |", cpuEach);
        line("original and columns kept, % of the text", "%.1f | |", 100.0 * (raw + columns) / drives.get(0).length);
        for (String one : new String[] {"raw_chunk", "recording_block", "recording_outline", "recording_landmark"}) {
            long size = number("select pg_total_relation_size('" + one + "')") / drives.size();
            line("table " + one + " with its indexes, % of the text", "%.1f | |", 100.0 * size / drives.get(0).length);
        }
        line("landmarks of a recording", "%d | |", number("select count(*) from recording_landmark") / drives.size());
        return kept;
    }

    private List<String> open(String serials, int wanted) {
        List<String> cases = new ArrayList<>();
        for (int i = 0; i < wanted; i++) {
            cases.add(BenchPeople.open(workshop, serials, i));
        }
        return cases;
    }

    private UUID upload(String number, byte[] csv) throws Exception {
        Answer answer = workshop.upload("/api/v1/cases/" + number + "/evidence", "d.csv", csv, null);
        return UUID.fromString(expect(201, answer).json().get("id").stringValue());
    }

    private static Timing judge(String edition) throws Exception {
        try (InputStream yaml = ServerBench.class.getResourceAsStream("/shared/rulebook/" + edition + ".yaml")) {
            Rulebook book = Rulebook.read(new ByteArrayInputStream(yaml.readAllBytes()));
            Recording recording = HourDrive.recording(true, 100);
            CaseInput input = HourDrive.in(recording);
            return Timing.of(60, 100, i -> Diagnosis.assess(input, book));
        }
    }

    private void series(UUID id, Timing fetch) throws Exception {
        String path = "/api/v1/evidence/" + id + "/series?points=";
        Timing whole = Timing.of(50, 200, i -> expect(200, workshop.get(path + (1000 + i))));
        Timing part = Timing.of(50, 200, i -> expect(200, workshop.get(path + "1000&from=" + i + "&to=" + (i + 600))));
        line("fetch its blocks, ms", "%s |", fetch.cells());
        line("**series of the hour, ms**", "%s | %.1f × the fetch", whole.cells(), whole.p50() / fetch.p50());
        line("**series of ten minutes of it, ms**", "%s | %.1f × the fetch", part.cells(), part.p50() / fetch.p50());
    }

    private void rerun(List<UUID> made) throws Exception {
        Timing fetch = bounds.fetch(made);
        line("fetch the blocks of one of many, ms", "%s |", fetch.cells());
        for (String mode : new String[] {"trial", "final"}) {
            String edition = "2026.1";
            Timing judge = judge(edition);
            line("judge alone by " + edition + ", ms", "%s |", judge.cells());
            double bound = Runtime.getRuntime().availableProcessors() * 1000 / (fetch.p50() + judge.p50());
            line("fetch and judge on all processors, recordings/s", "%.0f | |", bound);
            double cpu = server.cpuMs();
            JsonNode done = reassess(mode, edition);
            double cpuEach = (server.cpuMs() - cpu) / done.get("casesTotal").intValue();
            Duration took = Duration.between(
                    Instant.parse(done.get("startedAt").stringValue()),
                    Instant.parse(done.get("endedAt").stringValue()));
            int cases = done.get("casesTotal").intValue();
            double rate = cases / (took.toMillis() / 1e3);
            line("**" + mode + " run of " + edition + " over " + cases + ", recordings/s**", "%.1f | | %.2f of fetch and judge", rate, rate / bound);
            line("processor time of the server for each, ms", "%.1f | |", cpuEach);
        }
    }

    private JsonNode reassess(String mode, String edition) throws Exception {
        String id = expect(202, admin.postJson(
                        "/api/v1/reassessments", "{\"mode\":\"" + mode + "\",\"rulebook\":\"" + edition + "\"}"))
                .json()
                .get("id")
                .stringValue();
        while (true) {
            JsonNode shown = admin.get("/api/v1/reassessments/" + id).json();
            if (shown.get("failedTotal").intValue() > 0 || shown.get("state").stringValue().equals("failed")) {
                throw new IllegalStateException(shown.toString());
            }
            if (shown.get("state").stringValue().equals("done")) {
                return shown;
            }
            Thread.sleep(500);
        }
    }

    private long number(String sql) throws Exception {
        try (Connection connection = database.connect();
                ResultSet rows = connection.createStatement().executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    private static Answer expect(int status, Answer answer) {
        return BenchPeople.expect(status, answer);
    }

    private void line(String what, String cells, Object... values) {
        String row = "| " + what + " | " + String.format(Locale.ROOT, cells, values) + " |\n";
        System.out.print(row);
        table.append(row);
    }

    private void write(String load) throws Exception {
        String head = "# The server, 512 MiB of heap\n\n" + java.time.LocalDate.now() + ", "
                + Runtime.getRuntime().availableProcessors() + " processors, Java " + Runtime.version() + ", load before "
                + load + ", after " + load() + "\n\n| what | p50 or rate | p95 | ratio |\n|---|--:|--:|---|\n";
        Path file = Path.of("target", "bench", "server.md");
        Files.writeString(file, head + table);
        System.out.println("written: " + file);
    }

    private static String load() throws Exception {
        Path file = Path.of("/proc/loadavg");
        return Files.exists(file) ? Files.readString(file).split(" ")[0] : "not known";
    }
}
