package org.voltdocket.recovery;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.voltdocket.catalogue.Supplier;
import org.voltdocket.kernel.Money;

/** Sums waiting, sent, credited and refused amounts by supplier and currency. */
final class RecoveryTotals {

    private final Map<String, Sum> sums = new LinkedHashMap<>();

    private RecoveryTotals() {}

    private static final class Sum {
        private String supplier;
        private String name;
        private Currency currency;
        private int waitingClaims;
        private int sentClaims;
        private BigDecimal waiting = BigDecimal.ZERO;
        private BigDecimal sent = BigDecimal.ZERO;
        private BigDecimal credited = BigDecimal.ZERO;
        private BigDecimal refused = BigDecimal.ZERO;

        SupplierBalance balance() {
            return new SupplierBalance(
                    supplier,
                    name,
                    waitingClaims,
                    new Money(waiting, currency),
                    sentClaims,
                    new Money(sent, currency),
                    new Money(credited, currency),
                    new Money(refused, currency));
        }
    }

    static List<SupplierBalance> of(List<RecoverableClaim> waiting, List<SupplierRecovery> lists) {
        RecoveryTotals table = new RecoveryTotals();
        waiting.forEach(one -> one.product().ifPresent(product -> table.wait(one, product.supplier())));
        lists.stream().filter(list -> list.withdrawn().isEmpty()).forEach(table::list);
        return table.sums.values().stream()
                .map(Sum::balance)
                .sorted(Comparator.comparing(SupplierBalance::supplier).thenComparing(SupplierBalance::currency))
                .toList();
    }

    private void wait(RecoverableClaim one, Supplier supplier) {
        Sum sum = sum(supplier.code(), supplier.name(), one.amount().currency());
        sum.waitingClaims++;
        sum.waiting = sum.waiting.add(one.amount().amount());
    }

    private void list(SupplierRecovery list) {
        Sum sum = sum(list.supplier(), list.supplierName(), list.total().currency());
        for (SupplierRecovery.Line line : list.lines()) {
            BigDecimal asked = line.amount().amount();
            if (line.answer().isEmpty()) {
                sum.sentClaims++;
                sum.sent = sum.sent.add(asked);
            } else {
                BigDecimal back =
                        line.answer().get().credited().map(Money::amount).orElse(BigDecimal.ZERO);
                sum.credited = sum.credited.add(back);
                sum.refused = sum.refused.add(asked.subtract(back));
            }
        }
    }

    private Sum sum(String supplier, String name, Currency currency) {
        return sums.computeIfAbsent(supplier + " " + currency, none -> {
            Sum sum = new Sum();
            sum.supplier = supplier;
            sum.name = name;
            sum.currency = currency;
            return sum;
        });
    }
}
