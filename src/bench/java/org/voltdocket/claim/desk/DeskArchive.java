package org.voltdocket.claim.desk;

import java.io.IOException;
import java.io.StringReader;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.UUID;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyManager;
import org.springframework.jdbc.core.JdbcTemplate;
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
    private static final double[] STATE_SHARES = {.25, .01, .015, .01, .01, .01, .005, .005, .63, .055};
    private static final String[][] CAUSES = {
        {"charging-source", "current-sensor", "charge-control", "wiring", "standing-drain"},
        {"battery-worn", "battery-defect"},
        {"none"},
        {"duty", "misfit"},
        {"duty", "none", "battery-worn", "wiring"},
        {"none", "wiring"},
    };
    private static final String VIN = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";

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
                portion(copy, from, Math.min(cases, from + PORTION));
            }
            connection.createStatement().execute("set session_replication_role = origin");
        }
        indexes.forEach(db::execute);
        db.execute("insert into claim_tally (workshop_id, state, leaning, n) select workshop_id, state, coalesce(leaning, 'none'),"
                + " count(*) from claim_desk group by 1, 2, 3");
        db.execute("insert into claim_tally (workshop_id, state, leaning, n) select null, state, coalesce(leaning, 'none'), count(*)"
                + " from claim_desk group by 2, 3");
        db.execute("vacuum analyze");
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

    private void portion(CopyManager copy, int from, int to) throws SQLException, IOException {
        StringBuilder cases = new StringBuilder();
        StringBuilder seen = new StringBuilder();
        StringBuilder claims = new StringBuilder();
        for (int i = from; i < to; i++) {
            one(i, cases, seen, claims);
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

    private void one(int i, StringBuilder cases, StringBuilder seen, StringBuilder claims) {
        UUID id = new UUID(chance.nextLong(), chance.nextLong());
        String number = CaseNumber.of(1_000_000 + i).value();
        String serial = TYPES[skewed(TYPES.length)] + "-20" + (21 + chance.nextInt(6)) + "-" + String.format("%07d", i * 7919L % 9999991);
        String vin = vin();
        UUID workshop = workshops.get(skewed(WORKSHOPS));
        String state = STATES[pick(STATE_SHARES)];
        boolean open = List.of("draft", "submitted", "in-review", "evidence-asked").contains(state);
        Instant at = Instant.now().minus((long) (Math.pow(chance.nextDouble(), 1.3) * (open ? 60 : 1800) * 24 * 60), ChronoUnit.MINUTES);
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
