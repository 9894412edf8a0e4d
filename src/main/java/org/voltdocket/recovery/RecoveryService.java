package org.voltdocket.recovery;

import java.time.Clock;
import java.time.Instant;
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
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.recovery.SupplierRecovery.Answer;
import org.voltdocket.recovery.SupplierRecovery.Line;
import org.voltdocket.trail.Trail;

/**
 * Recoveries of approved claims from suppliers. {@code CLERK} and {@code ADMIN} make lists and enter answers, {@code AUDITOR} reads;
 * {@code WORKSHOP} is refused. Locks in this order: lists, trail.
 */
@Service
@Transactional
public class RecoveryService {

    private static final int MOST_WAITING = 5000;
    private static final int MOST_LISTS = 200;

    private final RecoveryRepository store;
    private final RecoveryCreator maker;
    private final SupplierAnswerParser answers;
    private final CatalogueService catalogue;
    private final Trail trail;
    private final Clock clock;

    RecoveryService(
            RecoveryRepository store,
            RecoveryCreator maker,
            SupplierAnswerParser answers,
            CatalogueService catalogue,
            Trail trail,
            Clock clock) {
        this.store = store;
        this.maker = maker;
        this.answers = answers;
        this.catalogue = catalogue;
        this.trail = trail;
        this.clock = clock;
    }

    /** By supplier and currency, always with what is open. */
    @Transactional(readOnly = true)
    public List<SupplierBalance> money(Actor actor) {
        mayRead(actor);
        return RecoveryTotals.of(waiting(), store.all(Integer.MAX_VALUE));
    }

    /** What workshops were paid for batteries that the bench found sound or damaged by use. A list to discuss, not an invoice. */
    @Transactional(readOnly = true)
    public List<WorkshopRepayment> fromWorkshops(Actor actor) {
        mayRead(actor);
        return store.fromWorkshops();
    }

    /** Approved claims that are in no live list, oldest decision first; at most 5000. */
    @Transactional(readOnly = true)
    public List<RecoverableClaim> waiting(Actor actor) {
        mayRead(actor);
        return waiting();
    }

    private List<RecoverableClaim> waiting() {
        List<RecoverableClaim> all = store.waiting(MOST_WAITING);
        Map<BatterySerial, Product> products =
                catalogue.of(all.stream().map(RecoverableClaim::serial).toList());
        return all.stream()
                .map(one -> new RecoverableClaim(
                        one.claim(),
                        one.number(),
                        one.serial(),
                        one.decidedOn(),
                        one.amount(),
                        Optional.ofNullable(products.get(one.serial()))))
                .toList();
    }

    /** Every list without its claims, newest first; at most 200. */
    @Transactional(readOnly = true)
    public List<SupplierRecovery> all(Actor actor) {
        mayRead(actor);
        return store.all(MOST_LISTS);
    }

    /** @throws org.voltdocket.kernel.RequestException (404) if there is none */
    @Transactional(readOnly = true)
    public SupplierRecovery of(Actor actor, String number) {
        mayRead(actor);
        return require(number);
    }

    /** The bytes as they were frozen. */
    @Transactional(readOnly = true)
    public byte[] pdf(Actor actor, String number) {
        return store.bytes(of(actor, number).id(), "pdf");
    }

    /** The bytes as they were frozen. */
    @Transactional(readOnly = true)
    public byte[] csv(Actor actor, String number) {
        return store.bytes(of(actor, number).id(), "csv");
    }

    /**
     * Makes a list, freezes its PDF and CSV, and so takes its claims out of those that wait.
     *
     * @param claims those to take; empty for all that wait for this supplier in this currency
     * @throws RequestException if nothing waits, or one of the claims does not (somebody may have been faster)
     */
    public SupplierRecovery make(Actor actor, String supplier, String currency, Set<UUID> claims) {
        mayWrite(actor);
        store.lock();
        List<RecoverableClaim> taken = waiting().stream()
                .filter(one -> one.product()
                        .filter(product -> product.supplier().code().equals(supplier))
                        .isPresent())
                .filter(one -> one.amount().code().equals(currency))
                .filter(one -> claims.isEmpty() || claims.contains(one.claim()))
                .toList();
        Set<UUID> missing = new HashSet<>(claims);
        taken.forEach(one -> missing.remove(one.claim()));
        if (taken.isEmpty() || !missing.isEmpty()) {
            throw conflict(
                    missing.isEmpty()
                            ? "Nothing waits for supplier " + supplier + " in " + currency + "."
                            : missing.size() + " of the claims named do not wait for supplier " + supplier + " in "
                                    + currency + "; somebody may have put them into a list just before.");
        }
        SupplierRecovery made = maker.make(actor, supplier, taken, now());
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

    /**
     * Keeps what came back for one claim. Another answer to the same claim corrects the earlier one, which is kept.
     *
     * @throws RequestException if something of it cannot be right
     */
    public SupplierRecovery answer(Actor actor, String number, SupplierAnswer given) {
        mayWrite(actor);
        store.lock();
        SupplierRecovery list = require(number);
        if (list.withdrawn().isPresent()) {
            throw conflict("List " + number + " was withdrawn; nobody answers it.");
        }
        Line line = list.lines().stream()
                .filter(one -> one.position() == given.position())
                .findFirst()
                .orElseThrow(() -> RequestException.invalid(
                        "recovery-refused",
                        "position",
                        "'position' is 1 to " + list.lines().size() + "; read " + given.position() + "."));
        Answer answer = answers.read(actor, line, given, now());
        store.answer(list.id(), line.position(), line.answers().size() + 1, answer);
        Map<String, Object> change = new LinkedHashMap<>();
        change.put("old", line.answer().map(RecoveryService::told).orElse(null));
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

    /**
     * Takes a list back that no answer has come to; its claims wait again.
     *
     * @throws RequestException if it has answers, was withdrawn before, or the reason is missing
     */
    public SupplierRecovery withdraw(Actor actor, String number, String reason) {
        mayWrite(actor);
        store.lock();
        SupplierRecovery list = require(number);
        String why = FreeText.required("recovery-refused", "reason", reason, "states why");
        if (list.withdrawn().isPresent()
                || list.lines().stream().anyMatch(line -> line.answer().isPresent())) {
            throw conflict("List " + number + " was withdrawn before or has answers, and so stays.");
        }
        store.withdraw(list.id(), now(), actor.user(), why);
        trail.record(actor, "recovery-withdrawn", subject(list), Map.of("recovery.reason", why));
        return require(number);
    }

    private SupplierRecovery require(String number) {
        return store.find(number).orElseThrow(() -> RequestException.notFound("list " + number));
    }

    private static RequestException conflict(String message) {
        return RequestException.of(409, "recovery-conflict", message + " Nothing was changed: read it again.");
    }

    private static String subject(SupplierRecovery list) {
        return "recovery/" + list.number();
    }

    private static void mayRead(Actor actor) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("only the distributor reads recoveries");
        }
    }

    private static void mayWrite(Actor actor) {
        if (!actor.canDecideClaims()) {
            throw new AccessDeniedException("only a clerk changes recoveries");
        }
    }

    private Instant now() {
        return clock.instant();
    }
}
