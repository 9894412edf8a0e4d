package org.voltdocket.desk;

import java.io.IOException;
import java.io.StringReader;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.jdbc.core.JdbcTemplate;
import org.voltdocket.assessment.FindingTexts;
import org.voltdocket.kernel.CaseNumber;

/**
 * An invented archive straight into PostgreSQL by COPY. Skewed as archives are: few workshops have most cases, most claims are
 * settled, the open ones are of the last weeks, serials of one type begin alike, and rare leanings are rare.
 */
final class DeskArchive {

    private static final int WORKSHOPS = 2000;
    private static final int PORTION = 20_000;
    private static final String[] TYPES = {"KAL7", "KAL9", "ORRA", "ORRB", "STRN", "SKV2", "SKV4", "HOLM"};
    private static final String[] LEANINGS = {
        "vehicle-side", "battery-side", "no-fault-seen", "usage-side", "open", "contradictory", null
    };
    private static final double[] LEANING_SHARES = {.40, .18, .17, .10, .10, .02, .03};
    private static final String[] STATES = {
        "none", "draft", "submitted", "in-review", "evidence-asked", "approved", "declined", "goodwill", "settled", "withdrawn"
    };
    private static final double[] OLD_SHARES = {.25, 0, 0, 0, 0, .01, .005, .005, .672, .058};
    private static final double[] RECENT_SHARES = {.25, .13, .2, .14, .14, .02, .01, .01, .09, .01};
    private static final int RECENT_DAYS = 60;
    private static final String[][] CAUSES = {
        {"charging-source", "current-sensor", "charge-control", "wiring", "standing-drain"},
        {"battery-worn", "battery-defect"},
        {"none"},
        {"duty", "misfit"},
        {"duty", "none", "battery-worn", "wiring"},
        {"none", "wiring"},
    };
    private static final String VIN = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";

    /** Of each case that is judged; ten and a few more, since some cases are not. */
    private static final int FINDINGS = 11;

    final List<UUID> workshops = new ArrayList<>();
    final List<String> serials = new ArrayList<>();
    final List<String> vins = new ArrayList<>();
    final List<String> numbers = new ArrayList<>();

    private final Random chance = new Random(20261125);
    private final DataSource source;
    private final JdbcTemplate db;

    DeskArchive(DataSource source) {
        this.source = source;
        this.db = new JdbcTemplate(source);
    }

    void fill(int cases) throws SQLException, IOException {
        List<String> indexes = db.queryForList(
                "select indexdef from pg_indexes where tablename in ('case_file', 'claim_desk', 'case_workshop') and indexname not in"
                        + " (select conname from pg_constraint)",
                String.class);
        for (String index : indexes) {
            db.execute("drop index " + index.replaceFirst("CREATE (UNIQUE )?INDEX (\\S+) ON.*", "$2"));
        }
        try (Connection connection = source.getConnection()) {
            connection.createStatement().execute("set session_replication_role = replica");
            CopyManager copy = connection.unwrap(PGConnection.class).getCopyAPI();
            workshops(copy);
            for (int from = 0; from < cases; from += PORTION) {
                portion(copy, from, Math.min(cases, from + PORTION), cases);
            }
            assessments(connection);
            notices(connection);
            connection.createStatement().execute("set session_replication_role = origin");
        }
        indexes.forEach(db::execute);
        db.execute("insert into claim_count_change (workshop_id, state, leaning, n) select workshop_id, state, coalesce(leaning, 'none'),"
                + " count(*) from claim_desk group by 1, 2, 3");
        db.execute("insert into claim_count_change (workshop_id, state, leaning, n) select null, state, coalesce(leaning, 'none'), count(*)"
                + " from claim_desk group by 2, 3");
        db.execute("vacuum analyze");
    }

    /** What the judge said of a case of the same cause, with values of its own, as the server keeps it. */
    private static void assessments(Connection connection) throws SQLException {
        Map<String, String> texts = FindingTexts.byCause(FINDINGS);
        String values = IntStream.range(0, FINDINGS)
                .mapToObj(i -> ", round(abs(hashtext(c.number || " + i + ")) % 100000 / 7000.0, 5)")
                .collect(Collectors.joining());
        try (PreparedStatement insert = connection.prepareStatement("""
                insert into assessment (id, case_id, edition, rulebook_sha256, input_sha256, assessed_at, leaning, battery_verdict, battery_reason,
                    first_cause, probability, body, regimes)
                select gen_random_uuid(), c.id, ?, ?, encode(sha256(c.number::bytea), 'hex'), c.assessed_at, c.leaning,
                    c.battery_verdict, 'tested-charged', c.first_cause, c.probability,
                    format(t.body, gen_random_uuid(), c.leaning, c.probability""" + values + "), '{}'"
                + " from case_file c join unnest(?::text[], ?::text[]) as t (cause, body) on t.cause = c.first_cause")) {
            insert.setString(1, FindingTexts.edition().edition());
            insert.setString(2, FindingTexts.edition().sha256().hex());
            insert.setArray(3, connection.createArrayOf("text", texts.keySet().toArray()));
            insert.setArray(4, connection.createArrayOf("text", texts.values().toArray()));
            insert.executeUpdate();
        }
    }

    /** One case in fifty has something to look at; half of it has been. */
    private static void notices(Connection connection) throws SQLException {
        connection.createStatement().execute("""
                insert into claim_notice (id, case_id, kind, key, grounds, found_at, looked_at, looked_by, looked_reason)
                select gen_random_uuid(), c.id, 'serial-claimed-twice', 'serial', '{invented}', c.opened_at,
                    case when n % 2 = 0 then c.opened_at end, case when n % 2 = 0 then 'clerk-1' end,
                    case when n % 2 = 0 then 'read both' end
                from (select id, opened_at, row_number() over (order by number) as n from case_file) c where n % 50 in (7, 32)
                """);
    }

    /** How many findings the assessments hold, and bytes of the table on the disk; the findings of some are read and counted. */
    String findings() {
        Integer wrong = db.queryForObject(
                "select count(*) from assessment tablesample system (0.1) where jsonb_array_length(body::jsonb -> 'findings') <> ?",
                Integer.class,
                FINDINGS);
        if (wrong != 0) {
            throw new IllegalStateException(wrong + " assessments have another number of findings");
        }
        return db.queryForObject(
                "select count(*) * ? || ' findings in ' || count(*) || ' assessments, '"
                        + " || pg_size_pretty(pg_total_relation_size('assessment')) from assessment",
                String.class,
                FINDINGS);
    }

    /** Reads back some keys to search for, and the workshops, the largest first. */
    void sample() {
        workshops.clear();
        workshops.addAll(db.queryForList("select id from workshop where name like 'Invented %' order by name", UUID.class));
        db.query("select battery_serial, vin, number from claim_desk where ordinal % 997 = 0", row -> {
            serials.add(row.getString(1));
            vins.add(row.getString(2));
            numbers.add(row.getString(3));
        });
    }

    private void workshops(CopyManager copy) throws SQLException, IOException {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < WORKSHOPS; i++) {
            UUID id = new UUID(chance.nextLong(), chance.nextLong());
            workshops.add(id);
            rows.append(id).append("\tInvented Workshop ").append(String.format("%04d", i)).append("\t2020-01-01\n");
        }
        copy.copyIn("copy workshop (id, name, created_at) from stdin", new StringReader(rows.toString()));
    }

    private void portion(CopyManager copy, int from, int to, int all) throws SQLException, IOException {
        StringBuilder cases = new StringBuilder();
        StringBuilder seen = new StringBuilder();
        StringBuilder claims = new StringBuilder();
        for (int i = from; i < to; i++) {
            one(i, 1 - (i + .5) / all, cases, seen, claims);
        }
        copy.copyIn(
                "copy case_file (id, number, battery_serial, vin, opened_at, opened_by, opened_workshop, leaning, battery_verdict,"
                        + " first_cause, probability, assessed_at, claim_state) from stdin",
                new StringReader(cases.toString()));
        copy.copyIn("copy case_workshop (case_id, workshop_id, added_at, added_by, opened_at) from stdin", new StringReader(seen.toString()));
        copy.copyIn(
                "copy claim_desk (claim_id, ordinal, case_id, number, battery_serial, vin, workshop_id, amount, currency, state,"
                        + " version, waiting_since, taken_by, answered, due_on, leaning, first_cause, probability) from stdin",
                new StringReader(claims.toString()));
    }

    /** Cases come in the order of time, as they do, {@code ago} from 1 to 0; so rows of a time lie side by side. */
    private void one(int i, double ago, StringBuilder cases, StringBuilder seen, StringBuilder claims) {
        UUID id = new UUID(chance.nextLong(), chance.nextLong());
        String number = CaseNumber.of(1_000_000 + i).value();
        String serial = TYPES[skewed(TYPES.length)] + "-20" + (21 + chance.nextInt(6)) + "-" + String.format("%07d", i * 7919L % 9999991);
        String vin = vin();
        UUID workshop = workshops.get(skewed(WORKSHOPS));
        double days = Math.pow(ago, 1.3) * 1800;
        Instant at = Instant.now().minus((long) (days * 24 * 60), ChronoUnit.MINUTES);
        String state = STATES[pick(days < RECENT_DAYS ? RECENT_SHARES : OLD_SHARES)];
        boolean open = List.of("draft", "submitted", "in-review", "evidence-asked").contains(state);
        int lean = pick(LEANING_SHARES);
        String leaning = LEANINGS[lean];
        String cause = leaning == null ? null : CAUSES[lean][skewed(CAUSES[lean].length)];
        String probability = leaning == null ? null : String.format(Locale.ROOT, "%.10f", 1 - Math.pow(chance.nextDouble(), 2) * .7);
        String verdict = leaning == null ? null : "sound";
        row(cases, id, number, serial, vin, at, "somebody", workshop, leaning, verdict, cause, probability,
                leaning == null ? null : at, state);
        row(seen, id, workshop, at, "somebody", at);
        if (!state.equals("none")) {
            boolean waits = open && !state.equals("draft");
            LocalDate due = LocalDate.ofInstant(at, ZoneOffset.UTC).plusDays(7);
            row(claims, UUID.nameUUIDFromBytes(number.getBytes()), 1_000_000 + i, id, number, serial, vin, workshop,
                    String.format(Locale.ROOT, "%.2f", 60 + Math.exp(3.6 + .7 * chance.nextGaussian())),
                    chance.nextInt(100) < 85 ? "EUR" : "CHF", state, 3, at,
                    state.equals("draft") || state.equals("submitted") ? null : "clerk-" + chance.nextInt(12),
                    state.equals("in-review") && chance.nextInt(4) == 0, waits ? due : null, leaning, cause, probability);
        }
    }

    private String vin() {
        StringBuilder vin = new StringBuilder("W"); // made where no check digit binds
        while (vin.length() < 17) {
            vin.append(VIN.charAt(chance.nextInt(VIN.length())));
        }
        return vin.toString();
    }

    private static void row(StringBuilder rows, Object... cells) {
        for (int i = 0; i < cells.length; i++) {
            rows.append(i == 0 ? "" : "\t").append(cells[i] == null ? "\\N" : cells[i]);
        }
        rows.append('\n');
    }

    /** 0 to {@code n} - 1, the small ones far more often: the density falls as 1/x. */
    int skewed(int n) {
        return (int) Math.min(n - 1, Math.exp(chance.nextDouble() * Math.log(n + 1)) - 1);
    }

    private int pick(double[] shares) {
        double left = chance.nextDouble();
        for (int i = 0; i < shares.length; i++) {
            left -= shares[i];
            if (left < 0) {
                return i;
            }
        }
        return shares.length - 1;
    }
}
