package org.voltdocket.server;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.util.FileSystemUtils;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.OwnDatabase;
import org.voltdocket.support.Server;

/**
 * Attacks on the availability of a server that this class starts itself, with 512 MiB of heap, over loopback only. During each
 * attack another user reads a page and the liveness. Writes {@code target/bench/attacks.md}.
 *
 * <p>{@code mvn -q -Pbench test-compile exec:exec -Dbench.main=org.voltdocket.server.AttackBench -Dbench="all"}: {@code all} or
 * names of attacks: anonymous-sessions, slow-bodies, large-json, many-marks, parallel-uploads, two-administrators,
 * forwarded-addresses. {@code BENCH_JAR} names the packaged server; without it the class path is used.
 */
public final class AttackBench {

    private static final int ANONYMOUS = 39_000;
    private static final int SOCKETS = 70;
    private static final int SLOW_S = 20;
    private static final int UPLOADS = 200;
    private static final int GUESSES = 150;

    private final OwnDatabase database;
    private final BenchServer server;
    private final BenchPeople people;
    private final Client clerk;
    private final Map<String, Attack> attacks = new TreeMap<>();
    private final StringBuilder table = new StringBuilder();

    private interface Attack {
        String run() throws Exception;
    }

    private AttackBench(OwnDatabase database, BenchServer server) {
        this.database = database;
        this.server = server;
        this.people = new BenchPeople(server);
        this.clerk = people.distributor("reader", "CLERK");
        attacks.put("anonymous-sessions", this::anonymousSessions);
        attacks.put("slow-bodies", this::slowBodies);
        attacks.put("large-json", this::largeJson);
        attacks.put("many-marks", this::manyMarks);
        attacks.put("parallel-uploads", this::parallelUploads);
        attacks.put("two-administrators", this::twoAdministrators);
        attacks.put("forwarded-addresses", this::forwardedAddresses);
    }

    public static void main(String[] args) throws Exception {
        Path folder = Path.of("target", "bench", "attacks").toAbsolutePath();
        FileSystemUtils.deleteRecursively(folder);
        Files.createDirectories(folder);
        try (OwnDatabase database = new OwnDatabase(folder.resolve("pg"));
                BenchServer server = new BenchServer(database, folder)) {
            new AttackBench(database, server).run(List.of(args));
        }
    }

    private void run(List<String> names) throws Exception {
        for (Map.Entry<String, Attack> attack : attacks.entrySet()) {
            if (names.isEmpty() || names.contains("all") || names.contains(attack.getKey())) {
                String load = Files.readString(Path.of("/proc/loadavg")).split(" ")[0];
                Bystander bystander = new Bystander();
                String result = attack.getValue().run();
                String row = "| " + attack.getKey() + " | " + result + " | " + bystander.end() + " | " + server.peakMb()
                        + " | " + load + " |\n";
                System.out.print(row);
                table.append(row);
            }
        }
        Path file = Path.of("target", "bench", "attacks.md");
        Files.writeString(
                file,
                "| attack | result | another user: list; liveness (p95 and most, ms) | most memory, MB | load before |\n"
                        + "|---|---|---|--:|--:|\n" + table);
        System.out.println("written: " + file);
    }

    /** Somebody who reads the list of cases every 200 ms, and a probe of the liveness. */
    private final class Bystander {

        private final AtomicBoolean ended = new AtomicBoolean();
        private final Map<String, List<Double>> ms = new ConcurrentHashMap<>();
        private final AtomicInteger failed = new AtomicInteger();
        private final List<Thread> threads = List.of(
                watch("list", clerk, "/api/v1/cases"),
                watch("liveness", server.management(), "/actuator/health/liveness"));

        private Thread watch(String what, Client client, String path) {
            List<Double> times = Collections.synchronizedList(new ArrayList<>());
            ms.put(what, times);
            Thread thread = new Thread(() -> {
                while (!ended.get()) {
                    long from = System.nanoTime();
                    try {
                        failed.addAndGet(client.get(path).status() == 200 ? 0 : 1);
                    } catch (RuntimeException e) {
                        failed.incrementAndGet();
                    }
                    times.add((System.nanoTime() - from) / 1e6);
                    pause(200);
                }
            });
            thread.start();
            return thread;
        }

        String end() throws InterruptedException {
            ended.set(true);
            for (Thread thread : threads) {
                thread.join();
            }
            Timing list = Timing.of(ms.get("list"));
            Timing alive = Timing.of(ms.get("liveness"));
            return String.format(
                    Locale.ROOT,
                    "%.0f, %.0f; %.0f, %.0f; %d of %d failed",
                    list.p95(),
                    list.most(),
                    alive.p95(),
                    alive.most(),
                    failed.get(),
                    list.sortedMs().length + alive.sortedMs().length);
        }
    }

    private static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Requests of 7 KB for a page that needs sign-in, over four connections, without any cookie. */
    private String anonymousSessions() throws Exception {
        byte[] request = ("GET /cases HTTP/1.1\r\nHost: localhost\r\nX-Filler: " + "x".repeat(7000) + "\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        long before = database.number("select count(*) from spring_session");
        long from = System.nanoTime();
        inParallel(4, who -> {
            int left = ANONYMOUS / 4;
            while (left > 0) {
                try (Socket socket = connect()) {
                    InputStream in = new BufferedInputStream(socket.getInputStream());
                    boolean open = true;
                    while (open && left > 0) {
                        socket.getOutputStream().write(request);
                        open = skipAnswer(in);
                        left--;
                    }
                }
            }
        });
        double s = (System.nanoTime() - from) / 1e9;
        long sessions = database.number("select count(*) from spring_session") - before;
        people.pages("reader");
        return String.format(
                Locale.ROOT, "%d requests in %.0f s; %d sessions kept; sign-in works", ANONYMOUS, s, sessions);
    }

    /** Sockets that announce a body and send a byte a second. */
    private String slowBodies() throws Exception {
        StringBuilder result = new StringBuilder();
        for (String path : List.of("/cases/new", "/sign-in", "/api/v1/cases/V-000-001-6/evidence")) {
            String type = path.endsWith("evidence") ? "multipart/form-data; boundary=b" : "application/x-www-form-urlencoded";
            List<Socket> sockets = new ArrayList<>();
            for (int i = 0; i < SOCKETS; i++) {
                Socket socket = connect();
                socket.getOutputStream()
                        .write(("POST " + path + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + type
                                        + "\r\nContent-Length: 100000\r\n\r\n-")
                                .getBytes(StandardCharsets.US_ASCII));
                sockets.add(socket);
            }
            long from = System.nanoTime();
            int status = server.client().get("/sign-in").status();
            double page = (System.nanoTime() - from) / 1e6;
            int open = 0;
            for (int second = 0; second < SLOW_S; second++) {
                open = 0;
                for (Socket socket : sockets) {
                    open += sends(socket) ? 1 : 0;
                }
                pause(1000);
            }
            for (Socket socket : sockets) {
                socket.close();
            }
            result.append(String.format(
                    Locale.ROOT,
                    "%s%s: page %d after %.0f ms, %d of %d still open after %d s",
                    result.length() == 0 ? "" : "; ",
                    path,
                    status,
                    page,
                    open,
                    SOCKETS,
                    SLOW_S));
        }
        return result.toString();
    }

    private static boolean sends(Socket socket) {
        try {
            OutputStream out = socket.getOutputStream();
            out.write('x');
            return socket.getInputStream().available() == 0;
        } catch (IOException closed) {
            return false;
        }
    }

    /** A JSON body of 80 MB with a token, by length and in chunks. */
    private String largeJson() {
        byte[] body = ("{\"complaint\":\"" + "x".repeat(80_000_000) + "\"}").getBytes(StandardCharsets.US_ASCII);
        long from = System.nanoTime();
        Answer known = clerk.send("POST", "/api/v1/cases", BodyPublishers.ofByteArray(body), "application/json");
        Answer chunked = clerk.send(
                "POST",
                "/api/v1/cases",
                BodyPublishers.ofInputStream(() -> new java.io.ByteArrayInputStream(body)),
                "application/json");
        return String.format(
                Locale.ROOT,
                "answered %d and %d in %.1f s",
                known.status(),
                chunked.status(),
                (System.nanoTime() - from) / 1e9);
    }

    /** A recording with 100,000 marks of 600 characters, then one with as many marks as are taken. */
    private String manyMarks() throws Exception {
        Client workshop = people.workshop("marks");
        String number = BenchPeople.open(workshop, "MARKS-", 1);
        Answer refused = workshop.upload("/api/v1/cases/" + number + "/evidence", "m.csv", marked(100_000, 600), null);
        Answer most = workshop.upload("/api/v1/cases/" + number + "/evidence", "m.csv", marked(1000, 65), null);
        StringBuilder result =
                new StringBuilder("100,000 marks: " + refused.status() + "; 1,000 marks: " + most.status());
        if (most.status() == 201) {
            String id = most.json().get("id").stringValue();
            for (String path : List.of(
                    "/api/v1/cases/" + number,
                    "/api/v1/cases/" + number + "/report.pdf",
                    "/api/v1/cases/" + number + "/bag.zip",
                    "/api/v1/evidence/" + id + "/series?points=10000")) {
                long from = System.nanoTime();
                int status = workshop.get(path).status();
                result.append(String.format(
                        Locale.ROOT,
                        "; %s %d in %.0f ms",
                        path.replaceFirst(".*/", "").replaceFirst("[?].*", ""),
                        status,
                        (System.nanoTime() - from) / 1e6));
            }
            long from = System.nanoTime();
            int status = people.pages("marks").get("/cases/" + number).status();
            result.append(String.format(
                    Locale.ROOT, "; page %d in %.0f ms", status, (System.nanoTime() - from) / 1e6));
        }
        return result.toString();
    }

    private static byte[] marked(int marks, int length) {
        StringBuilder csv = new StringBuilder("time_s,measured_v,engine_rpm,mark\n");
        String mark = "m".repeat(length);
        for (int i = 0; i < Math.max(marks, 900); i++) {
            csv.append(i).append(i < 120 ? ",12.61,0," : ",14.20,850,").append(i < marks ? mark : "").append('\n');
        }
        return csv.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** Uploads of an hour's drive at the same time, from ten accounts. */
    private String parallelUploads() throws Exception {
        List<byte[]> drives = HourDrive.files(UPLOADS / 10);
        List<Client> workshops = new ArrayList<>();
        List<String> cases = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            workshops.add(people.workshop("parallel-" + i));
            cases.add(BenchPeople.open(workshops.get(i), "PARALLEL-", i));
        }
        Map<String, AtomicInteger> answers = new TreeMap<>();
        long from = System.nanoTime();
        inParallel(UPLOADS, who -> {
            Answer answer = workshops
                    .get(who % 10)
                    .upload("/api/v1/cases/" + cases.get(who % 10) + "/evidence", "d.csv", drives.get(who / 10), null);
            String type = answer.status() == 201 ? "" : answer.json().get("type").stringValue().replaceFirst(".*#", " ");
            synchronized (answers) {
                answers.computeIfAbsent(answer.status() + type, key -> new AtomicInteger()).incrementAndGet();
            }
        });
        return String.format(Locale.ROOT, "%s in %.0f s", answers, (System.nanoTime() - from) / 1e9);
    }

    /** Two administrators who disable each other at the same moment. */
    private String twoAdministrators() throws Exception {
        people.distributor("second-admin", "ADMIN");
        Map<String, Client> pages = new TreeMap<>();
        Map<String, String> ids = new TreeMap<>();
        for (String name : List.of(BenchServer.ADMIN, "second-admin")) {
            pages.put(name, people.pages(name));
            ids.put(name, "" + idOf(name));
        }
        List<Integer> statuses = Collections.synchronizedList(new ArrayList<>());
        List<String> names = List.copyOf(pages.keySet());
        inParallel(2, who -> statuses.add(pages.get(names.get(who))
                .postForm("/accounts/" + ids.get(names.get(1 - who)) + "/standing", Map.of("enabled", "false"))
                .status()));
        return "answered " + statuses + "; administrators left: "
                + database.number("select count(*) from account where role = 'ADMIN' and enabled");
    }

    private String idOf(String account) throws Exception {
        try (var connection = database.connect();
                var select = connection.prepareStatement("select id from account where name = ?")) {
            select.setString(1, account);
            try (var rows = select.executeQuery()) {
                rows.next();
                return rows.getString(1);
            }
        }
    }

    /** Wrong passwords for one account, each with another forwarded address; then for other accounts from one address. */
    private String forwardedAddresses() {
        people.distributor("target", "AUDITOR");
        int[] checked = new int[2];
        long from = System.nanoTime();
        for (int i = 0; i < GUESSES; i++) {
            checked[0] += guess("target", "198.51.100." + i) ? 1 : 0;
        }
        for (int i = 0; i < GUESSES; i++) {
            checked[1] += guess("nobody-" + i, "203.0.113.9") ? 1 : 0;
        }
        return String.format(
                Locale.ROOT,
                "one account, rotating address: %d of %d passwords checked; many accounts, one address: %d of %d; %.0f s",
                checked[0],
                GUESSES,
                checked[1],
                GUESSES,
                (System.nanoTime() - from) / 1e9);
    }

    private boolean guess(String account, String address) {
        return server.client()
                        .header("X-Forwarded-For", address)
                        .header(
                                "Authorization",
                                "Basic "
                                        + Base64.getEncoder()
                                                .encodeToString((account + ":wrong " + Server.PASSWORD)
                                                        .getBytes(StandardCharsets.UTF_8)))
                        .postJson("/api/v1/tokens", "{\"name\":\"x\"}")
                        .status()
                == 401;
    }

    private interface One {
        void run(int who) throws Exception;
    }

    private static void inParallel(int count, One one) throws InterruptedException {
        CountDownLatch start = new CountDownLatch(1);
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int who = i;
            Thread thread = new Thread(() -> {
                try {
                    start.await();
                    one.run(who);
                } catch (Exception e) {
                    System.out.println("attack " + who + ": " + e);
                }
            });
            thread.start();
            threads.add(thread);
        }
        start.countDown();
        for (Thread thread : threads) {
            thread.join();
        }
    }

    private Socket connect() throws IOException {
        return new Socket(InetAddress.getLoopbackAddress(), server.port());
    }

    private static final Pattern LENGTH = Pattern.compile("(?i)\r\ncontent-length: (\\d+)");

    /** Reads an answer with a known length; false where the connection ends. */
    private static boolean skipAnswer(InputStream in) throws IOException {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        String text = "";
        while (!text.endsWith("\r\n\r\n")) {
            int b = in.read();
            if (b < 0) {
                return false;
            }
            head.write(b);
            text = b == '\n' ? head.toString(StandardCharsets.US_ASCII) : "";
        }
        Matcher length = LENGTH.matcher(text);
        in.skipNBytes(length.find() ? Long.parseLong(length.group(1)) : 0);
        return !text.toLowerCase(Locale.ROOT).contains("\r\nconnection: close");
    }
}
