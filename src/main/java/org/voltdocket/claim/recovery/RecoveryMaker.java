package org.voltdocket.claim.recovery;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.Money;
import org.voltdocket.claim.recovery.Recovery.Line;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Sha256;

/** Makes a list of what waits, prints it and keeps all three. */
@Component
class RecoveryMaker {

    private final RecoveryStore store;
    private final RecoveryList printer;

    RecoveryMaker(RecoveryStore store, RecoveryList printer) {
        this.store = store;
        this.printer = printer;
    }

    /** @param taken of one supplier and one currency, at least one */
    Recovery make(Actor actor, String supplier, List<Waiting> taken, Instant at) {
        List<Line> lines = IntStream.range(0, taken.size())
                .mapToObj(i -> RecoveryStore.line(i + 1, taken.get(i)))
                .toList();
        BigDecimal total = lines.stream().map(line -> line.amount().amount()).reduce(BigDecimal.ZERO, BigDecimal::add);
        Currency currency = lines.get(0).amount().currency();
        String name = taken.get(0).product().orElseThrow().supplier().name();
        Recovery bare = new Recovery(
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
        Recovery made = new Recovery(
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
