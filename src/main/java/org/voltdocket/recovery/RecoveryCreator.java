package org.voltdocket.recovery;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.recovery.SupplierRecovery.Line;

/** Creates a list of recoverable claims and stores it with its PDF and CSV. */
@Component
class RecoveryCreator {

    private final RecoveryRepository store;
    private final RecoveryListPrinter printer;

    RecoveryCreator(RecoveryRepository store, RecoveryListPrinter printer) {
        this.store = store;
        this.printer = printer;
    }

    /** @param taken of one supplier and one currency, at least one */
    SupplierRecovery make(Actor actor, String supplier, List<RecoverableClaim> taken, Instant at) {
        List<Line> lines = IntStream.range(0, taken.size())
                .mapToObj(i -> RecoveryRepository.line(i + 1, taken.get(i)))
                .toList();
        BigDecimal total = lines.stream().map(line -> line.amount().amount()).reduce(BigDecimal.ZERO, BigDecimal::add);
        Currency currency = lines.get(0).amount().currency();
        String name = taken.get(0).product().orElseThrow().supplier().name();
        SupplierRecovery bare = new SupplierRecovery(
                UUID.randomUUID(),
                store.nextNumber(),
                supplier,
                name,
                new Money(total, currency),
                at,
                actor.user(),
                Sha256.of(new byte[0]),
                Sha256.of(new byte[0]),
                Optional.empty(),
                lines);
        byte[] csv = printer.csv(bare);
        byte[] pdf = printer.pdf(bare, Sha256.of(csv));
        SupplierRecovery made = new SupplierRecovery(
                bare.id(),
                bare.number(),
                supplier,
                name,
                bare.total(),
                bare.madeAt(),
                bare.madeBy(),
                Sha256.of(pdf),
                Sha256.of(csv),
                Optional.empty(),
                lines);
        store.keep(made, pdf, csv);
        return made;
    }
}
