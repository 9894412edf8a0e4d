package org.voltdocket.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.util.FileSystemUtils;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.OwnDatabase;

/**
 * Workshops that upload drives of a quarter of an hour again and again, beside readers of lists, cases and curves: the server in a process of
 * its own with 512 MiB of heap. A refused upload is sent again after the time that the answer names. At the end every
 * acknowledged file is fetched and compared. Writes {@code target/bench/load.md}.
 *
 * <p>{@code mvn -q -Pbench test-compile exec:exec -Dbench.main=org.voltdocket.server.LoadBench -Dbench="600 50 20 10 1 1200"}:
 * seconds, workshops, readers, pauses after an upload and after a page, s, and how many different drives. {@code BENCH_JAR}
 * names the packaged server; without it the class path is used.
 */
public final class LoadBench {

    private static final int QUARTERS = 4;
    private static final List<String> PAGES = List.of("list of cases", "desk", "case", "series");

    private final BenchServer server;
    private final long endNanos;
    private final double uploadPauseS;
    private final double readPauseS;
    private final List<Path> drives;
    private final Map<String, List<Double>> timesMs = new ConcurrentHashMap<>();
    private final Map<String, AtomicInteger> answers = new ConcurrentHashMap<>();
    private final Map<String, Acknowledged> acknowledged = new ConcurrentHashMap<>();
    private final AtomicInteger next = new AtomicInteger();
    private final SecureRandom random = new SecureRandom();

    private record Acknowledged(Client owner, String number, String sha256) {}

    private interface Step {
        void run(int round) throws Exception;
    }

    private LoadBench(BenchServer server, String[] args, List<Path> drives) {
        this.server = server;
        this.drives = drives;
        this.uploadPauseS = number(args, 3, 10);
        this.readPauseS = number(args, 4, 1);
        this.endNanos = System.nanoTime() + (long) (number(args, 0, 600) * 1e9);
    }

    private static double number(String[] args, int at, double usual) {
        return args.length > at ? Double.parseDouble(args[at]) : usual;
    }

    public static void main(String[] args) throws Exception {
        Path folder = Path.of("target", "bench", "load").toAbsolutePath();
        FileSystemUtils.deleteRecursively(folder);
        Files.createDirectories(folder);
        List<Path> drives = drives((int) number(args, 5, 1200));
        try (OwnDatabase database = new OwnDatabase(folder.resolve("pg"));
                BenchServer server = new BenchServer(database, folder)) {
            BenchPeople people = new BenchPeople(server);
            List<Client> workshops = new ArrayList<>();
            for (int i = 0; i < (int) number(args, 1, 50); i++) {
                workshops.add(people.workshop("shop-" + i));
            }
            List<Client> readers = new ArrayList<>();
            for (int i = 0; i < (int) number(args, 2, 20); i++) {
                people.distributor("reader-" + i, "CLERK");
                readers.add(people.pages("reader-" + i));
            }
            new LoadBench(server, args, drives).run(args, workshops, readers);
        }
    }

    /** Different drives, kept for the next time; quarters of an hour do not overlap, so none is a copy of another. */
    private static List<Path> drives(int wanted) throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "bench", "drives"));
        List<Path> quarters = new ArrayList<>();
        for (long seed = 100; quarters.size() < wanted; seed++) {
            if (!Files.exists(folder.resolve(seed + "-0.csv"))) {
                try {
                    split(HourDrive.csv(HourDrive.recording(true, seed)), folder, seed);
                } catch (IllegalStateException tooShort) {
                    continue;
                }
            }
            for (int i = 0; i < QUARTERS; i++) {
                quarters.add(folder.resolve(seed + "-" + i + ".csv"));
            }
        }
        return quarters;
    }

    private static void split(byte[] hour, Path folder, long seed) throws IOException {
        List<String> lines = new String(hour, StandardCharsets.US_ASCII).lines().toList();
        int rows = (lines.size() - 1) / QUARTERS;
        for (int i = QUARTERS - 1; i >= 0; i--) {
            String quarter = lines.get(0) + "\n" + String.join("\n", lines.subList(1 + i * rows, 1 + (i + 1) * rows)) + "\n";
            Files.writeString(folder.resolve(seed + "-" + i + ".csv"), quarter);
        }
    }

    private void run(String[] args, List<Client> workshops, List<Client> readers) throws Exception {
        String load = Files.readString(Path.of("/proc/loadavg")).strip();
        double cpuMs = server.cpuMs();
        long startNanos = System.nanoTime();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < workshops.size(); i++) {
            int who = i;
            threads.add(loop(round -> upload(workshops.get(who), who, round)));
        }
        for (int i = 0; i < readers.size(); i++) {
            int who = i;
            threads.add(loop(round -> read(readers.get(who), who + round)));
        }
        for (Thread thread : threads) {
            thread.join();
        }
        double processors = (server.cpuMs() - cpuMs) / ((System.nanoTime() - startNanos) / 1e6);
        String loadAfter = Files.readString(Path.of("/proc/loadavg")).strip();
        int lost = lost();
        report(args, load + ", after " + loadAfter, processors, lost);
    }

    private Thread loop(Step step) {
        Thread thread = new Thread(() -> {
            try {
                Thread.sleep(random.nextInt(3000));
                for (int round = 0; System.nanoTime() < endNanos; round++) {
                    step.run(round);
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } catch (Exception e) {
                count("failure: " + e);
            }
        });
        thread.start();
        return thread;
    }

    private void upload(Client workshop, int who, int round) throws InterruptedException, IOException {
        String number = open(workshop, who, round);
        byte[] file = Files.readAllBytes(drives.get(next.getAndIncrement() % drives.size()));
        long from = System.nanoTime();
        while (true) {
            long sent = System.nanoTime();
            Answer answer = workshop.upload("/api/v1/cases/" + number + "/evidence", "d.csv", file, null);
            count("upload " + answer.status());
            if (answer.status() == 201) {
                time("upload, accepted request", sent);
                time("upload, from the first try", from);
                acknowledged.put(
                        answer.json().get("id").stringValue(),
                        new Acknowledged(workshop, number, Sha256.of(file).hex()));
                break;
            }
            Thread.sleep(1000L * Integer.parseInt(answer.header("retry-after").orElse("5")));
        }
        Thread.sleep((long) (1000 * uploadPauseS));
    }

    private String open(Client workshop, int who, int round) throws InterruptedException {
        String keys = String.format("{\"batterySerial\":\"LOAD-%d-%d\",\"vin\":\"ZZ0L%013d\"}", who, round, 1000 * who + round);
        while (true) {
            Answer answer = workshop.postJson("/api/v1/cases", keys);
            count("open " + answer.status());
            if (answer.status() == 201 || answer.status() == 200) {
                return answer.json().get("number").stringValue();
            }
            Thread.sleep(1000L * Integer.parseInt(answer.header("retry-after").orElse("5")));
        }
    }

    /** Pages of a clerk: the list of cases, the desk, a case, and the curves of its recording. */
    private void read(Client reader, int round) throws InterruptedException {
        List<Map.Entry<String, Acknowledged>> all = new ArrayList<>(acknowledged.entrySet());
        int what = all.isEmpty() ? 0 : round % PAGES.size();
        Map.Entry<String, Acknowledged> one = all.isEmpty() ? null : all.get(random.nextInt(all.size()));
        String path =
                switch (what) {
                    case 0 -> "/cases";
                    case 1 -> "/desk";
                    case 2 -> "/cases/" + one.getValue().number();
                    default -> "/evidence/" + one.getKey() + "/series?points=1000";
                };
        long from = System.nanoTime();
        Answer answer = (what == PAGES.size() - 1 ? reader.header("Accept", "application/json") : reader).get(path);
        time("read, all", from);
        time("read, " + PAGES.get(what), from);
        count("read " + answer.status());
        Thread.sleep((long) (1000 * readPauseS));
    }

    private void time(String what, long fromNanos) {
        timesMs.computeIfAbsent(what, key -> Collections.synchronizedList(new ArrayList<>()))
                .add((System.nanoTime() - fromNanos) / 1e6);
    }

    private void count(String what) {
        answers.computeIfAbsent(what, key -> new AtomicInteger()).incrementAndGet();
    }

    /** Acknowledged files that are not there bit for bit. */
    private int lost() {
        int lost = 0;
        for (Map.Entry<String, Acknowledged> one : acknowledged.entrySet()) {
            Answer content =
                    one.getValue().owner().get("/api/v1/evidence/" + one.getKey() + "/content");
            boolean same = content.status() == 200
                    && Sha256.of(content.body()).hex().equals(one.getValue().sha256());
            lost += same ? 0 : 1;
        }
        return lost;
    }

    private void report(String[] args, String load, double processors, int lost) throws Exception {
        StringBuilder text = new StringBuilder("# Load: workshops uploading beside readers\n\n- Date: "
                + java.time.LocalDate.now() + "\n- Machine: " + Runtime.getRuntime().availableProcessors()
                + " processors, shared with PostgreSQL and the senders; load average before " + load
                + "; the server itself had " + String.format(Locale.ROOT, "%.2f", processors) + " processors"
                + "\n- Arguments: `" + String.join(" ", args) + "`, 512 MiB of heap, most memory of the process "
                + server.peakMb() + " MB\n- Acknowledged uploads: " + acknowledged.size() + ", lost: " + lost
                + "\n\n| what | count | p50, ms | p95, ms | most, ms |\n|---|--:|--:|--:|--:|\n");
        for (Map.Entry<String, List<Double>> one : new TreeMap<>(timesMs).entrySet()) {
            Timing timing = Timing.of(one.getValue());
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %d | %.0f | %.0f | %.0f |%n",
                    one.getKey(),
                    timing.sortedMs().length,
                    timing.p50(),
                    timing.p95(),
                    timing.most()));
        }
        text.append("\n| answer | count |\n|---|--:|\n");
        new TreeMap<>(answers).forEach((what, count) -> text.append("| " + what + " | " + count + " |\n"));
        Path file = Path.of("target", "bench", "load.md");
        Files.writeString(file, text);
        System.out.println(text + "\nwritten: " + file);
    }
}
