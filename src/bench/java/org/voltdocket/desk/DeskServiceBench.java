package org.voltdocket.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import javax.sql.DataSource;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcTemplate;
import org.voltdocket.Voltdocket;
import org.voltdocket.casefile.search.CaseQuery;
import org.voltdocket.casefile.search.CaseSearch;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;

/**
 * How long the desk takes over an archive of a million cases, through the server's own beans, and its page over HTTP; the
 * plans of PostgreSQL beside it. Writes {@code target/bench/desk.md}.
 *
 * <p>{@code mvn -q -Pbench test-compile exec:exec -Dbench.main=org.voltdocket.desk.DeskServiceBench -Dbench="1000000 200"}:
 * how many cases (0: those of the database that the property {@code voltdocket.bench.url} names), how many runs of each query, and a part of the names of
 * those to run, where not all are.
 */
public final class DeskServiceBench {

    private static final int WARM_UP = 20;

    private final StringBuilder table = new StringBuilder();
    private final StringBuilder plans = new StringBuilder();
    private final int runs;
    private final String only;
    private final DeskArchive archive;
    private final DeskService desk;
    private final CaseSearch cases;
    private final WorkingDayService days;
    private final NamedParameterJdbcTemplate db;
    private final Actor clerk = new Actor("clerk-3", Role.CLERK, Optional.empty());

    private DeskServiceBench(ConfigurableApplicationContext server, DeskArchive archive, int runs, String only) {
        this.runs = runs;
        this.only = only;
        this.archive = archive;
        this.desk = server.getBean(DeskService.class);
        this.cases = server.getBean(CaseSearch.class);
        this.days = server.getBean(WorkingDayService.class);
        this.db = new NamedParameterJdbcTemplate(server.getBean(JdbcTemplate.class));
    }

    public static void main(String[] args) throws Exception {
        int size = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
        int runs = args.length > 1 ? Integer.parseInt(args[1]) : 200;
        String only = args.length > 2 ? args[2] : "";
        Class<?> testServer = Class.forName("org.voltdocket.support.BenchServerConfig");
        try (ConfigurableApplicationContext server = new SpringApplicationBuilder(Voltdocket.class, testServer)
                .run("--server.port=0", "--server.shutdown=immediate", "--voltdocket.admin.user=first-admin",
                        "--voltdocket.admin.password=" + Server.PASSWORD)) {
            DeskArchive archive = new DeskArchive(server.getBean(DataSource.class));
            long start = System.nanoTime();
            if (size > 0) {
                archive.fill(size);
            }
            archive.sample();
            long seconds = (System.nanoTime() - start) / 1_000_000_000;
            System.out.println("archive: " + seconds + " s, " + archive.findings());
            DeskServiceBench bench = new DeskServiceBench(server, archive, runs, only);
            bench.all(server.getBean(Server.class));
            bench.write(size, seconds);
        }
    }

    private void all(Server server) {
        table.append("| what | p50 | p95 | p99 | most |\n|---|--:|--:|--:|--:|\n");
        Actor large = workshop(0);
        desk("clerk: the queue", clerk, i -> Map.of());
        deep("clerk: the queue, 20 pages down", Map.of(), 20);
        desk("clerk: handed in, oldest first", clerk, i -> Map.of("state", "submitted", "order", "oldest"));
        desk("clerk: overdue, due first", clerk, i -> Map.of("due", "over", "order", "due"));
        desk("clerk: open, by cause", clerk, i -> Map.of("cause", Cause.values()[i % Cause.values().length].id()));
        desk("clerk: open, leaning and least probability", clerk, i -> Map.of("leaning", Leaning.values()[i % 6].id(), "least", "90"));
        desk("clerk: open, taken by me", clerk, i -> Map.of("taker", "me"));
        desk("clerk: open, 10 days and older, 100 to 150", clerk, i -> Map.of("age", "10", "from", "100", "to", "150"));
        desk("clerk: open, one workshop", clerk, i -> Map.of("workshop", name(i)));
        desk("clerk: all, one workshop", clerk, i -> Map.of("state", "all", "workshop", name(i)));
        desk("clerk: settled, one workshop and leaning, largest", clerk, i ->
                Map.of("state", "settled", "workshop", name(i), "leaning", "vehicle-side", "order", "largest"));
        desk("clerk: all, newest first", clerk, i -> Map.of("state", "all", "order", "newest"));
        deep("clerk: all, 100 pages down", Map.of("state", "all"), 100);
        desk("clerk: open, to look at", clerk, i -> Map.of("look", "open"));
        desk("clerk: all, to look at, oldest first", clerk, i -> Map.of("state", "all", "look", "open", "order", "oldest"));
        desk("clerk: all, overdue, due first", clerk, i -> Map.of("state", "all", "due", "over", "order", "due"));
        desk("clerk: settled, contradictory", clerk, i -> Map.of("state", "settled", "leaning", "contradictory"));
        desk("clerk: settled, least clear of a cause", clerk, i ->
                Map.of("state", "settled", "cause", Cause.values()[i % Cause.values().length].id(), "order", "least-clear"));
        desk("clerk: settled, leaning, cause, amount, age", clerk, i -> Map.of(
                "state", "settled", "leaning", "vehicle-side", "cause", "wiring", "from", "150", "to", "152", "age", "200"));
        desk("clerk: all, a narrow amount", clerk, i -> Map.of("state", "all", "from", "" + (100 + i % 80), "to", (100 + i % 80) + ".05"));
        desk("search: a whole serial", clerk, i -> Map.of("state", "all", "q", one(archive.serials, i)));
        desk("search: a serial as it is typed", clerk, i -> {
            String serial = one(archive.serials, i / 4);
            return Map.of("state", "all", "q", serial.substring(0, 3 + i % (serial.length() - 2)));
        });
        desk("search: the end of a serial", clerk, i -> Map.of("state", "all", "q", one(archive.serials, i).substring(12)));
        desk("search: a serial as it is typed, open only", clerk, i -> {
            String serial = one(archive.serials, i / 4);
            return Map.of("q", serial.substring(0, 3 + i % (serial.length() - 2)));
        });
        desk("search: last 6 of a VIN", clerk, i -> Map.of("state", "all", "q", one(archive.vins, i).substring(11)));
        desk("search: a case number", clerk, i -> Map.of("state", "all", "q", one(archive.numbers, i)));
        desk("search: what is not there", clerk, i -> Map.of("state", "all", "q", "ZZQ-" + i));
        desk("workshop: its queue", large, i -> Map.of());
        desk("workshop: all of it, newest first", large, i -> Map.of("state", "all", "order", "newest"));
        desk("workshop: settled, one leaning, largest", large, i ->
                Map.of("state", "settled", "leaning", Leaning.values()[i % 6].id(), "order", "largest"));
        desk("any workshop: its queue, due first", null, i -> Map.of("order", "due"));
        desk("any workshop: search", null, i -> Map.of("state", "all", "q", one(archive.serials, i).substring(0, 9)));
        time("counts: clerk", i -> desk.counts(clerk));
        time("counts: any workshop", i -> desk.counts(workshop(i % archive.workshops.size())));
        cases("list of cases: clerk", i -> query("", Optional.empty(), Optional.empty()), clerk);
        cases("list of cases: by leaning and claim", i -> query("", Optional.of(Leaning.VEHICLE_SIDE), Optional.of("submitted")), clerk);
        cases("list of cases: search", i -> query(one(archive.serials, i).substring(0, 12), Optional.empty(), Optional.empty()), clerk);
        cases("list of cases: any workshop", i -> query("", Optional.empty(), Optional.empty()), null);
        cases("list of cases: any workshop, by claim", i -> query("", Optional.empty(), Optional.of("submitted")), null);
        cases("list of cases: any workshop, search", i -> query(one(archive.serials, i).substring(0, 9), Optional.empty(), Optional.empty()), null);
        Client page = server.browser(server.newUser(Role.CLERK));
        time("page over HTTP: the clerk's desk", i -> expect(page.get("/desk").status()));
        time("page over HTTP: the clerk's desk, to look at", i -> expect(page.get("/desk?look=open").status()));
        time("page over HTTP: list of cases", i -> expect(page.get("/cases").status()));
        time("page over HTTP: a case of the archive", i -> expect(page.get("/cases/" + one(archive.numbers, i)).status()));
        String sent = sent(server);
        time("page over HTTP: a case with its evidence", i -> expect(page.get("/cases/" + sent).status()));
        time("page over HTTP: all, by cause", i -> expect(page.get("/desk?state=all&cause=wiring").status()));
    }

    /** A case with a drive of an hour and tests, sent as a workshop does. */
    private static String sent(Server server) {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String serial = "BENCH-" + System.currentTimeMillis();
        String number = workshop.postJson(
                        "/api/v1/cases", "{\"batterySerial\":\"" + serial + "\",\"vin\":\"W0BENCH0000000001\"}")
                .json()
                .get("number")
                .stringValue();
        String evidence = "/api/v1/cases/" + number + "/evidence";
        workshop.upload(evidence, "drive.csv", HourDrive.csv(HourDrive.recording(true, 100)), null);
        for (String file : List.of("battery-test.json", "charging-test.json", "cranking-test.json")) {
            try {
                workshop.upload(evidence, file, Files.readAllBytes(Path.of("shared", "samples", file)), null);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return number;
    }

    private static void expect(int status) {
        if (status != 200) {
            throw new IllegalStateException("answered " + status);
        }
    }

    private static CaseQuery query(String q, Optional<Leaning> leaning, Optional<String> state) {
        return new CaseQuery(q, leaning, Optional.empty(), state, 30, Optional.empty());
    }

    private Actor workshop(int i) {
        return new Actor("workshop-" + i, Role.WORKSHOP, Optional.of(archive.workshops.get(i)));
    }

    private String name(int i) {
        return String.format("Workshop %04d", Math.min(1999, (int) Math.pow(1.4, i % 23)));
    }

    private static String one(List<String> of, int i) {
        return of.get(i * 31 % of.size());
    }

    private void desk(String what, Actor actor, IntFunction<Map<String, String>> filters) {
        time(what, i -> desk.page(
                actor == null ? workshop(i * 7 % archive.workshops.size()) : actor, DeskFilter.read(filters.apply(i)), Optional.empty()));
        plan(what, sql(actor == null ? workshop(7) : actor, filters.apply(1)));
    }

    private void deep(String what, Map<String, String> given, int pages) {
        DeskFilter filter = DeskFilter.read(given);
        Optional<String> cursor = Optional.empty();
        for (int i = 0; i < pages; i++) {
            cursor = desk.page(clerk, filter, cursor).next();
        }
        Optional<String> at = cursor;
        time(what, i -> desk.page(clerk, filter, at));
        DeskSearchSql sql = sql(clerk, given);
        at.ifPresent(text -> sql.after(DeskCursor.read(text, filter.order())));
        plan(what, sql);
    }

    private void cases(String what, IntFunction<CaseQuery> queries, Actor actor) {
        time(what, i -> cases.page(actor == null ? workshop(i * 7 % archive.workshops.size()) : actor, queries.apply(i)));
    }

    private DeskSearchSql sql(Actor actor, Map<String, String> filter) {
        return desk.sql(actor, DeskFilter.read(filter));
    }

    private void time(String what, IntConsumer work) {
        if (!what.contains(only)) {
            return;
        }
        for (int i = 0; i < WARM_UP; i++) {
            work.accept(i);
        }
        double[] ms = new double[runs];
        for (int i = 0; i < runs; i++) {
            long start = System.nanoTime();
            work.accept(i);
            ms[i] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(ms);
        String row = String.format(
                java.util.Locale.ROOT,
                "| %s | %.1f | %.1f | %.1f | %.1f |%n",
                what,
                ms[runs / 2],
                ms[runs * 95 / 100],
                ms[runs * 99 / 100],
                ms[runs - 1]);
        System.out.print(row);
        table.append(row);
    }

    private void plan(String what, DeskSearchSql sql) {
        if (!what.contains(only)) {
            return;
        }
        List<String> lines = db.queryForList(
                "explain (analyze, buffers, costs off, timing off) " + sql.select(" limit " + (DeskService.LINES + 1)), sql.params(), String.class);
        plans.append("\n### ").append(what).append("\n\n```\n").append(String.join("\n", lines)).append("\n```\n");
    }

    private void write(int size, long seconds) throws IOException {
        List<String> head = new ArrayList<>();
        head.add("# The desk over " + size + " cases\n");
        head.add("Milliseconds, " + runs + " runs each after " + WARM_UP + " to warm up; the archive was generated in " + seconds + " s: "
                + archive.findings() + ".\n");
        Path file = Path.of("target", "bench", "desk.md");
        Files.createDirectories(file.getParent());
        Files.writeString(file, String.join("\n", head) + "\n" + table + "\n## Plans\n" + plans);
        System.out.println("written: " + file);
    }
}
