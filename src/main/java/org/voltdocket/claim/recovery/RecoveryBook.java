package org.voltdocket.claim.recovery;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.casefile.catalogue.Catalogue;
import org.voltdocket.casefile.catalogue.Product;
import org.voltdocket.claim.recovery.Recovery.Answer;
import org.voltdocket.claim.recovery.Recovery.Line;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Role;
import org.voltdocket.trail.Trail;

/** The lists in PostgreSQL. Locks in this order: lists, trail. */
@Service
@Transactional
class RecoveryBook implements Recoveries {

    private static final int MOST_WAITING = 5000;
    private static final int MOST_LISTS = 200;

    private final RecoveryStore store;
    private final RecoveryMaker maker;
    private final AnswerReader answers;
    private final Catalogue catalogue;
    private final Trail trail;
    private final Clock clock;

    RecoveryBook(
            RecoveryStore store,
            RecoveryMaker maker,
            AnswerReader answers,
            Catalogue catalogue,
            Trail trail,
            Clock clock) {
        this.store = store;
        this.maker = maker;
        this.answers = answers;
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
        Recovery made = maker.make(actor, supplier, taken, now());
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
        Answer answer = answers.read(actor, line, given, now());
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

    @Override
    public Recovery withdraw(Actor actor, String number, String reason) {
        mayWrite(actor);
        store.lock();
        Recovery list = require(number);
        String why = AnswerReader.text(reason)
                .orElseThrow(() -> RecoveryRefused.member("reason", "'reason' is missing: say why."));
        if (list.withdrawn().isPresent()
                || list.lines().stream().anyMatch(line -> line.answer().isPresent())) {
            throw RecoveryRefused.conflict("List " + number + " was withdrawn before or has answers, and so stays.");
        }
        store.withdraw(list.id(), now(), actor.user(), why);
        trail.record(actor, "recovery-withdrawn", subject(list), Map.of("recovery.reason", why));
        return require(number);
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
