package org.voltdocket.claim.recovery;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.casefile.catalogue.Catalogue;
import org.voltdocket.casefile.catalogue.Product;
import org.voltdocket.claim.Money;
import org.voltdocket.claim.recovery.Recovery.Answer;
import org.voltdocket.claim.recovery.Recovery.Line;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.trail.Trail;

/** The lists in PostgreSQL. Locks in this order: lists, trail. */
@Service
@Transactional
class RecoveryBook implements Recoveries {

    private static final int MOST_WAITING = 5000;
    private static final int MOST_LISTS = 200;
    private static final int MOST_REASON = 2000;

    private final RecoveryStore store;
    private final RecoveryList printer;
    private final Catalogue catalogue;
    private final Trail trail;
    private final Clock clock;

    RecoveryBook(RecoveryStore store, RecoveryList printer, Catalogue catalogue, Trail trail, Clock clock) {
        this.store = store;
        this.printer = printer;
        this.catalogue = catalogue;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<OpenMoney> money(Actor actor) {
        mayRead(actor);
        return MoneyTable.of(waiting(), store.all(Integer.MAX_VALUE));
    }

    @Override
    @Transactional(readOnly = true)
    public List<Waiting> waiting(Actor actor) {
        mayRead(actor);
        return waiting();
    }

    private List<Waiting> waiting() {
        List<Waiting> all = store.waiting(MOST_WAITING);
        Map<BatterySerial, Product> products =
                catalogue.of(all.stream().map(Waiting::serial).toList());
        return all.stream()
                .map(one -> new Waiting(
                        one.claim(),
                        one.number(),
                        one.serial(),
                        one.decidedOn(),
                        one.amount(),
                        Optional.ofNullable(products.get(one.serial()))))
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Recovery> all(Actor actor) {
        mayRead(actor);
        return store.all(MOST_LISTS);
    }

    @Override
    @Transactional(readOnly = true)
    public Recovery of(Actor actor, String number) {
        mayRead(actor);
        return require(number);
    }

    @Override
    @Transactional(readOnly = true)
    public byte[] pdf(Actor actor, String number) {
        return store.bytes(of(actor, number).id(), "pdf");
    }

    @Override
    @Transactional(readOnly = true)
    public byte[] csv(Actor actor, String number) {
        return store.bytes(of(actor, number).id(), "csv");
    }

    @Override
    public Recovery make(Actor actor, String supplier, String currency, Set<UUID> claims) {
        mayWrite(actor);
        store.lock();
        List<Waiting> taken = waiting().stream()
                .filter(one -> one.product()
                        .filter(product -> product.supplier().code().equals(supplier))
                        .isPresent())
                .filter(one -> one.amount().code().equals(currency))
                .filter(one -> claims.isEmpty() || claims.contains(one.claim()))
                .toList();
        Set<UUID> missing = new HashSet<>(claims);
        taken.forEach(one -> missing.remove(one.claim()));
        if (taken.isEmpty() || !missing.isEmpty()) {
            throw RecoveryRefused.conflict(
                    missing.isEmpty()
                            ? "Nothing waits for supplier " + supplier + " in " + currency + "."
                            : missing.size() + " of the claims named do not wait for supplier " + supplier + " in "
                                    + currency + "; somebody may have put them into a list just before.");
        }
        Recovery made = frozen(actor, supplier, taken);
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("recovery.supplier", supplier);
        details.put("recovery.total", made.total().toString());
        details.put(
                "recovery.claims",
                made.lines().stream().map(line -> line.number().value()).toList());
        details.put("recovery.pdf", made.pdf().hex());
        details.put("recovery.csv", made.csv().hex());
        trail.record(actor, "recovery-made", subject(made), details);
        return made;
    }

    private Recovery frozen(Actor actor, String supplier, List<Waiting> taken) {
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
                now(),
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

    @Override
    public Recovery answer(Actor actor, String number, AnswerGiven given) {
        mayWrite(actor);
        store.lock();
        Recovery list = require(number);
        if (list.withdrawn().isPresent()) {
            throw RecoveryRefused.conflict("List " + number + " was withdrawn; nobody answers it.");
        }
        Line line = list.lines().stream()
                .filter(one -> one.position() == given.position())
                .findFirst()
                .orElseThrow(() -> RecoveryRefused.member(
                        "position", "'position' is 1 to " + list.lines().size() + "; read " + given.position() + "."));
        Answer answer = read(actor, line, given);
        store.answer(list.id(), line.position(), line.answers().size() + 1, answer);
        Map<String, Object> change = new LinkedHashMap<>();
        change.put("old", line.answer().map(RecoveryBook::told).orElse(null));
        change.put("new", told(answer));
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("recovery.claim", line.number().value());
        details.put("recovery.answer", change);
        answer.reason().ifPresent(reason -> details.put("recovery.reason", reason));
        trail.record(actor, "recovery-answered", subject(list), details);
        return require(number);
    }

    private static String told(Answer answer) {
        return answer.credited().map(money -> "credited " + money).orElse("refused") + ", " + answer.on();
    }

    private Answer read(Actor actor, Line line, AnswerGiven given) {
        Optional<String> reason = text(given.reason());
        boolean credited = "credited".equals(given.outcome());
        if (!credited && !"refused".equals(given.outcome())) {
            throw RecoveryRefused.member(
                    "outcome", "'outcome' is credited or refused; read '" + given.outcome() + "'.");
        }
        if (reason.isEmpty() && (!credited || !line.answers().isEmpty())) {
            throw RecoveryRefused.member("reason", "'reason' is missing: a refusal and a correction say why.");
        }
        return new Answer(
                credited ? Optional.of(amount(line, given.amount())) : Optional.empty(),
                day(line, given.on()),
                reason,
                now(),
                actor.user());
    }

    private static Money amount(Line line, String given) {
        if (given == null || given.isBlank()) {
            return line.amount();
        }
        Money amount = Money.read(given.replace(',', '.'), line.amount().currency());
        if (amount.amount().compareTo(line.amount().amount()) > 0) {
            throw RecoveryRefused.member(
                    "amount", "'amount' is at most what was asked for, " + line.amount() + "; read " + amount + ".");
        }
        return amount;
    }

    private LocalDate day(Line line, String given) {
        try {
            LocalDate day = LocalDate.parse(given == null ? "" : given.strip());
            if (!day.isAfter(LocalDate.ofInstant(clock.instant(), clock.getZone()))
                    && !day.isBefore(line.decidedOn())) {
                return day;
            }
        } catch (DateTimeException e) {
            // said below
        }
        throw RecoveryRefused.member(
                "on",
                "'on' is the day of the answer, such as 2026-03-04, from the approval on " + line.decidedOn()
                        + " until today; read '" + given + "'.");
    }

    @Override
    public Recovery withdraw(Actor actor, String number, String reason) {
        mayWrite(actor);
        store.lock();
        Recovery list = require(number);
        String why = text(reason).orElseThrow(() -> RecoveryRefused.member("reason", "'reason' is missing: say why."));
        if (list.withdrawn().isPresent()
                || list.lines().stream().anyMatch(line -> line.answer().isPresent())) {
            throw RecoveryRefused.conflict("List " + number + " was withdrawn before or has answers, and so stays.");
        }
        store.withdraw(list.id(), now(), actor.user(), why);
        trail.record(actor, "recovery-withdrawn", subject(list), Map.of("recovery.reason", why));
        return require(number);
    }

    private static Optional<String> text(String given) {
        Optional<String> text = Optional.ofNullable(given).map(String::strip).filter(one -> !one.isEmpty());
        if (text.filter(one -> one.length() > MOST_REASON || one.indexOf(0) >= 0)
                .isPresent()) {
            throw RecoveryRefused.member("reason", "'reason' has at most " + MOST_REASON + " characters.");
        }
        return text;
    }

    private Recovery require(String number) {
        return store.find(number).orElseThrow(() -> new NotVisible("list " + number));
    }

    private static String subject(Recovery list) {
        return "recovery/" + list.number();
    }

    private static void mayRead(Actor actor) {
        if (actor.role() == Role.WORKSHOP) {
            throw new AccessDeniedException("what suppliers owe is the distributor's");
        }
    }

    private static void mayWrite(Actor actor) {
        if (actor.role() != Role.CLERK && actor.role() != Role.ADMIN) {
            throw new AccessDeniedException("lists are made by clerks");
        }
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
