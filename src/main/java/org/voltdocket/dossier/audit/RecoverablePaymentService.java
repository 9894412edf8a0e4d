package org.voltdocket.dossier.audit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;

/**
 * Payments that may be recovered: from the supplier where the bench confirmed a defect, from the workshop where an approved claim
 * was not justified. A list to discuss, not an invoice.
 */
@Service
@Transactional(readOnly = true)
public class RecoverablePaymentService {

    private final JdbcClient db;

    RecoverablePaymentService(JdbcClient db) {
        this.db = db;
    }

    /**
     * One amount.
     *
     * @param from {@code supplier} or {@code workshop}
     * @param name of the debtor; empty where the catalogue has no supplier for the battery
     * @param kind the decision: {@code approved} or {@code goodwill}
     * @param type and {@code batch} according to the catalogue on arrival; may be null
     */
    public record Item(
            String from,
            String name,
            BigDecimal amount,
            String currency,
            String caseNumber,
            UUID returned,
            String returnNumber,
            String serial,
            String type,
            String batch,
            String kind,
            String outcome,
            String outcomeReason) {}

    /** The total of one debtor in one currency. */
    public record Total(String from, String name, String currency, BigDecimal amount, int items) {}

    /** Suppliers first, by name. */
    public List<Item> items(Actor actor) {
        DecisionReviewService.require(actor);
        return db.sql(
                        "select * from (select q.*, case when outcome = 'defect-confirmed' then 'supplier' else 'workshop' end"
                                + " as owes from (" + DecisionReviewService.DECIDED + """
                        ) q where amount > 0 and (outcome = 'defect-confirmed' and kind in ('approved', 'goodwill')
                            or outcome in ('no-fault-found', 'damaged-by-use') and kind = 'approved')) l
                        order by owes, case when owes = 'supplier' then supplier else workshop end nulls last,
                            outcome_ordinal desc""")
                .query((row, n) -> {
                    boolean supplier = row.getString("owes").equals("supplier");
                    String name = row.getString(supplier ? "supplier" : "workshop");
                    return new Item(
                            row.getString("owes"),
                            name == null ? "" : name,
                            row.getBigDecimal("amount"),
                            row.getString("currency"),
                            row.getString("case_number"),
                            row.getObject("return_id", UUID.class),
                            row.getString("return_number"),
                            row.getString("battery_serial"),
                            row.getString("type"),
                            row.getString("batch"),
                            row.getString("kind"),
                            row.getString("outcome"),
                            row.getString("outcome_reason"));
                })
                .list();
    }

    /** Totals by debtor and currency, in the order of the list. */
    public static List<Total> totals(List<Item> items) {
        Map<String, Total> totals = new TreeMap<>();
        for (Item item : items) {
            totals.merge(
                    item.from() + "|" + item.name() + "|" + item.currency(),
                    new Total(item.from(), item.name(), item.currency(), item.amount(), 1),
                    (a, b) -> new Total(
                            a.from(), a.name(), a.currency(), a.amount().add(b.amount()), a.items() + b.items()));
        }
        return List.copyOf(totals.values());
    }
}
