package org.voltdocket.recovery;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeMap;
import org.voltdocket.kernel.Money;

/**
 * What may still be recovered in one currency. No claim counts twice: a battery that the bench found sound or damaged by use is
 * not claimed from its supplier.
 *
 * @param suppliers approved and not claimed yet, or claimed and not answered
 * @param workshops paid for batteries without a defect
 * @param total the sum of both
 */
public record OpenTotal(Money suppliers, Money workshops, Money total) {

    /** One total for each currency, by its code. */
    public static List<OpenTotal> of(List<SupplierBalance> suppliers, List<WorkshopRepayment> workshops) {
        TreeMap<String, BigDecimal> fromSuppliers = new TreeMap<>();
        suppliers.forEach(one -> fromSuppliers.merge(
                one.currency(), one.waiting().amount().add(one.sent().amount()), BigDecimal::add));
        TreeMap<String, BigDecimal> fromWorkshops = new TreeMap<>();
        workshops.forEach(
                one -> fromWorkshops.merge(one.amount().code(), one.amount().amount(), BigDecimal::add));
        TreeMap<String, BigDecimal> all = new TreeMap<>(fromSuppliers);
        fromWorkshops.forEach((code, amount) -> all.merge(code, amount, BigDecimal::add));
        List<OpenTotal> totals = new ArrayList<>();
        all.forEach((code, amount) -> {
            Currency currency = Currency.getInstance(code);
            totals.add(new OpenTotal(
                    new Money(fromSuppliers.getOrDefault(code, BigDecimal.ZERO), currency),
                    new Money(fromWorkshops.getOrDefault(code, BigDecimal.ZERO), currency),
                    new Money(amount, currency)));
        });
        return totals;
    }
}
