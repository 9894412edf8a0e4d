package org.voltdocket.recovery;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.voltdocket.catalogue.Product;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.recovery.SupplierRecovery.Answer;
import org.voltdocket.recovery.SupplierRecovery.Line;

/** Lists and answers in PostgreSQL. */
@Repository
class RecoveryRepository {

    /** Any number will do, as long as nothing else locks it; these are the letters "regress". */
    private static final long LOCK = 0x72656772657373L;

    private static final String HEAD = "select id, number, supplier, supplier_name, currency, amount, made_at, made_by,"
            + " pdf_sha256, csv_sha256, withdrawn_at, withdrawn_by, withdrawn_reason from recovery ";

    private final JdbcClient db;

    RecoveryRepository(JdbcClient db) {
        this.db = db;
    }

    /** Lets one transaction at a time make or change lists. */
    void lock() {
        db.sql("select pg_advisory_xact_lock(?)").param(LOCK).query(rs -> {});
    }

    /** The latest bench outcome of the case {@code f}, where it says that the battery had no defect. */
    private static final String NO_DEFECT = """
            (select x.* from returned_result x where x.case_id = f.id order by x.ordinal desc limit 1) r
            where r.outcome in ('no-fault-found', 'damaged-by-use')""";

    /**
     * Approved claims in no live list, without their products. Batteries that the bench found sound or damaged by use are left
     * out: the supplier owes nothing for them.
     */
    List<RecoverableClaim> waiting(int limit) {
        return db.sql("""
                        select c.id, f.number, f.battery_serial, c.decided_at, c.paid as amount, c.currency
                        from claim_summary c join case_summary f on f.id = c.case_id
                        where c.state in ('approved', 'settled') and c.decision = 'approved'
                            and not exists (select from recovery_claim r where r.claim_id = c.id and r.live)
                            and not exists (select from """ + " " + NO_DEFECT + """
                            )
                        order by c.decided_at, c.ordinal limit ?""")
                .param(limit)
                .query((row, number) -> new RecoverableClaim(
                        row.getObject("id", UUID.class),
                        new CaseNumber(row.getString("number")),
                        new BatterySerial(row.getString("battery_serial")),
                        day(row, "decided_at"),
                        money(row, "amount", row.getString("currency")),
                        Optional.empty()))
                .list();
    }

    /** Approved claims whose battery had no defect, by workshop, the latest outcome first. */
    List<WorkshopRepayment> fromWorkshops() {
        return db.sql("""
                        select coalesce(w.name, '') as workshop, c.paid, c.currency, f.number, r.*
                        from claim_summary c join case_summary f on f.id = c.case_id
                        left join workshop_summary w on w.id = c.workshop_id
                        join lateral (select q.return_id, q.number as return_number, q.battery_serial, q.type, q.batch,
                                q.outcome, q.outcome_reason, q.outcome_ordinal
                            from (select r.* from """ + " " + NO_DEFECT + """
                            ) q) r on true
                        where c.decision = 'approved' and c.paid > 0
                        order by 1, r.outcome_ordinal desc""")
                .query((row, number) -> new WorkshopRepayment(
                        row.getString("workshop"),
                        money(row, "paid", row.getString("currency")),
                        new CaseNumber(row.getString("number")),
                        row.getObject("return_id", UUID.class),
                        row.getString("return_number"),
                        row.getString("battery_serial"),
                        row.getString("type"),
                        row.getString("batch"),
                        row.getString("outcome"),
                        row.getString("outcome_reason")))
                .list();
    }

    String nextNumber() {
        return String.format(
                "R-%05d",
                db.sql("select nextval('recovery_ordinal')").query(Long.class).single());
    }

    void keep(SupplierRecovery made, byte[] pdf, byte[] csv) {
        db.sql("insert into recovery (id, number, supplier, supplier_name, currency, amount, made_at, made_by, pdf,"
                        + " pdf_sha256, csv, csv_sha256) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        made.id(),
                        made.number(),
                        made.supplier(),
                        made.supplierName(),
                        made.total().code(),
                        made.total().amount(),
                        made.madeAt().atOffset(ZoneOffset.UTC),
                        made.madeBy(),
                        pdf,
                        made.pdf().hex(),
                        csv,
                        made.csv().hex())
                .update();
        made.lines()
                .forEach(line -> db.sql("insert into recovery_claim (recovery_id, position, claim_id, case_number,"
                                + " battery_serial, type, batch, decided_on, amount, live)"
                                + " values (?, ?, ?, ?, ?, ?, ?, ?, ?, true)")
                        .params(
                                made.id(),
                                line.position(),
                                line.claim(),
                                line.number().value(),
                                line.serial().value(),
                                line.type(),
                                line.batch(),
                                line.decidedOn(),
                                line.amount().amount())
                        .update());
    }

    void answer(UUID recovery, int position, int ordinal, Answer answer) {
        db.sql("insert into recovery_answer (recovery_id, position, ordinal, outcome, amount, answered_on, reason,"
                        + " recorded_at, recorded_by) values (?, ?, ?, ?, ?, ?, ?, ?, ?)")
                .param(recovery)
                .param(position)
                .param(ordinal)
                .param(answer.credited().isPresent() ? "credited" : "refused")
                .param(answer.credited().map(Money::amount).orElse(null))
                .param(answer.on())
                .param(answer.reason().orElse(null))
                .param(answer.recordedAt().atOffset(ZoneOffset.UTC))
                .param(answer.recordedBy())
                .update();
    }

    void withdraw(UUID recovery, Instant at, String by, String reason) {
        db.sql("update recovery set withdrawn_at = ?, withdrawn_by = ?, withdrawn_reason = ? where id = ?")
                .params(at.atOffset(ZoneOffset.UTC), by, reason, recovery)
                .update();
        db.sql("update recovery_claim set live = false where recovery_id = ?")
                .param(recovery)
                .update();
    }

    List<SupplierRecovery> all(int limit) {
        return db.sql(HEAD + "order by made_at desc, number desc limit ?")
                .param(limit)
                .query(this::whole)
                .list();
    }

    Optional<SupplierRecovery> find(String number) {
        return db.sql(HEAD + "where number = ?")
                .param(number)
                .query(this::whole)
                .optional();
    }

    byte[] bytes(UUID recovery, String column) {
        return db.sql("select " + (column.equals("pdf") ? "pdf" : "csv") + " from recovery where id = ?")
                .param(recovery)
                .query((row, number) -> row.getBytes(1))
                .single();
    }

    private SupplierRecovery whole(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        String currency = row.getString("currency");
        OffsetDateTime withdrawn = row.getObject("withdrawn_at", OffsetDateTime.class);
        return new SupplierRecovery(
                id,
                row.getString("number"),
                row.getString("supplier"),
                row.getString("supplier_name"),
                money(row, "amount", currency),
                row.getObject("made_at", OffsetDateTime.class).toInstant(),
                row.getString("made_by"),
                new Sha256(row.getString("pdf_sha256")),
                new Sha256(row.getString("csv_sha256")),
                withdrawn == null
                        ? Optional.empty()
                        : Optional.of(new SupplierRecovery.Withdrawn(
                                withdrawn.toInstant(),
                                row.getString("withdrawn_by"),
                                row.getString("withdrawn_reason"))),
                lines(id, currency));
    }

    private List<Line> lines(UUID recovery, String currency) {
        Map<Integer, List<Answer>> answers = new TreeMap<>();
        db.sql("select * from recovery_answer where recovery_id = ? order by position, ordinal")
                .param(recovery)
                .query(row -> {
                    BigDecimal amount = row.getBigDecimal("amount");
                    answers.computeIfAbsent(row.getInt("position"), none -> new ArrayList<>())
                            .add(new Answer(
                                    amount == null ? Optional.empty() : Optional.of(money(row, "amount", currency)),
                                    row.getObject("answered_on", LocalDate.class),
                                    Optional.ofNullable(row.getString("reason")),
                                    row.getObject("recorded_at", OffsetDateTime.class)
                                            .toInstant(),
                                    row.getString("recorded_by")));
                });
        return db.sql("select * from recovery_claim where recovery_id = ? order by position")
                .param(recovery)
                .query((row, number) -> new Line(
                        row.getInt("position"),
                        row.getObject("claim_id", UUID.class),
                        new CaseNumber(row.getString("case_number")),
                        new BatterySerial(row.getString("battery_serial")),
                        row.getString("type"),
                        row.getString("batch"),
                        row.getObject("decided_on", LocalDate.class),
                        money(row, "amount", currency),
                        List.copyOf(answers.getOrDefault(row.getInt("position"), List.of()))))
                .list();
    }

    static Line line(int position, RecoverableClaim one) {
        Product product = one.product().orElseThrow();
        return new Line(
                position,
                one.claim(),
                one.number(),
                one.serial(),
                product.type().code(),
                product.batch(),
                one.decidedOn(),
                one.amount(),
                List.of());
    }

    private static Money money(ResultSet row, String column, String currency) throws SQLException {
        return new Money(row.getBigDecimal(column), Currency.getInstance(currency));
    }

    private static LocalDate day(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class)
                .withOffsetSameInstant(ZoneOffset.UTC)
                .toLocalDate();
    }
}
