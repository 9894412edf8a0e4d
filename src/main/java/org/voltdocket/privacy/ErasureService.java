package org.voltdocket.privacy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.evidence.original.OriginalEraser;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/**
 * Legal holds and the erasure of personal data, for administrators. Each act is in the trail with actor and reason. Decisions,
 * statistics and the chain of the trail stay verifiable, because they rest on digests.
 */
@Service
@EnableConfigurationProperties(RetentionSettings.class)
public class ErasureService {

    private static final int MOST_DUE = 500;

    private final CaseService cases;
    private final CaseEraser eraser;
    private final ErasureRepository store;
    private final RetentionSettings retention;
    private final Trail trail;
    private final TransactionTemplate transaction;
    private final Clock clock;

    ErasureService(
            CaseService cases,
            CaseEraser eraser,
            ErasureRepository store,
            RetentionSettings retention,
            Trail trail,
            TransactionTemplate transaction,
            Clock clock) {
        this.cases = cases;
        this.eraser = eraser;
        this.store = store;
        this.retention = retention;
        this.trail = trail;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** What the configured periods would erase now, the oldest first; a case is listed for its largest part. */
    public List<DueCase> preview(Actor actor) {
        requireAdministrator(actor);
        List<DueCase> due = new ArrayList<>();
        for (ErasurePart part : List.of(ErasurePart.CASE, ErasurePart.ORIGINALS, ErasurePart.DOCUMENTS)) {
            retention.of(part).ifPresent(period -> {
                Instant before =
                        clock.instant().atZone(ZoneOffset.UTC).minus(period).toInstant();
                store.due(part, before, MOST_DUE).stream()
                        .filter(one ->
                                due.stream().noneMatch(known -> known.number().equals(one.number())))
                        .forEach(due::add);
            });
        }
        return due;
    }

    /** The configured periods by part, in the order of {@link ErasurePart}; a part without a period is never due. */
    public Map<ErasurePart, String> periods() {
        Map<ErasurePart, String> periods = new java.util.EnumMap<>(ErasurePart.class);
        Arrays.stream(ErasurePart.values())
                .forEach(part -> retention.of(part).ifPresent(period -> periods.put(part, period.toString())));
        return periods;
    }

    public List<Hold> holds(Actor actor) {
        requireAdministrator(actor);
        return store.holds();
    }

    public List<Erased> erasures(Actor actor) {
        requireAdministrator(actor);
        return store.erasures();
    }

    /** Prevents any erasure of a case until {@link #release}. */
    public void hold(Actor actor, CaseNumber number, String reason) {
        requireAdministrator(actor);
        String why = reason(reason);
        transaction.executeWithoutResult(status -> {
            CaseReference ref = cases.require(actor, number);
            store.addHold(ref.id(), why, clock.instant(), actor.user());
            trail.record(actor, "legal-hold-placed", number.value(), Map.of("reason", why));
        });
    }

    /** Ends all holds of a case. */
    public void release(Actor actor, CaseNumber number, String reason) {
        requireAdministrator(actor);
        String why = reason(reason);
        transaction.executeWithoutResult(status -> {
            CaseReference ref = cases.require(actor, number);
            if (!store.releaseHolds(ref.id(), why, clock.instant(), actor.user())) {
                throw refused("Case " + number + " has no legal hold.");
            }
            trail.record(actor, "legal-hold-released", number.value(), Map.of("reason", why));
        });
    }

    /**
     * Erases a part of a case.
     *
     * @throws RequestException if a hold or a claim in progress prevents it, or the part is erased already
     */
    public Erased erase(Actor actor, CaseNumber number, ErasurePart part, String reason) {
        requireAdministrator(actor);
        String why = reason(reason);
        List<OriginalEraser.Removed> removed = new ArrayList<>();
        Erased erased = transaction.execute(status -> {
            CaseReference ref = eraser.lock(cases.require(actor, number));
            refuse(ref, part);
            removed.addAll(eraser.erase(ref, part));
            Instant at = clock.instant();
            store.addErasure(ref.id(), part, why, at, actor.user(), removed.size());
            Map<String, Object> details = Map.of(
                    "part",
                    part.id(),
                    "reason",
                    why,
                    "originals",
                    removed.stream().map(one -> one.sha256().hex()).toList());
            if (part == ErasurePart.CASE) {
                trail.erase(actor, number.value(), details);
            } else {
                trail.record(actor, "originals-erased", number.value(), details);
            }
            return new Erased(number.value(), part, why, at, actor.user(), removed.size());
        });
        eraser.removeObjects(removed);
        return erased;
    }

    private void refuse(CaseReference ref, ErasurePart part) {
        if (store.isHeld(ref.id())) {
            throw refused("Case " + ref.number() + " is under a legal hold.");
        }
        if (store.isInProgress(ref.id())) {
            throw refused("The claim of case " + ref.number() + " has not ended: settle or withdraw it first.");
        }
        if (store.isErased(ref.id(), part)) {
            throw refused("This part of case " + ref.number() + " is erased already.");
        }
    }

    /** Erases what {@link #preview} lists and no hold prevents, each case on its own; returns how many. */
    public int eraseDue(Actor actor, String reason) {
        requireAdministrator(actor);
        String why = reason(reason);
        int erased = 0;
        for (DueCase due : preview(actor)) {
            if (!due.held()) {
                erase(actor, CaseNumber.parse(due.number()), due.part(), why);
                erased++;
            }
        }
        return erased;
    }

    private static String reason(String text) {
        return FreeText.required("erasure-refused", "reason", text, "says why");
    }

    private static RequestException refused(String message) {
        return RequestException.of(409, "erasure-refused", message + " Nothing was changed.");
    }

    private static void requireAdministrator(Actor actor) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator erases personal data");
        }
    }

    /** The part with this identifier, as a form sends it. */
    public static Optional<ErasurePart> part(String id) {
        return ErasurePart.of(id);
    }
}
