package org.voltdocket.warranty;

import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.trail.Trail;

/** The warranty terms. What was recorded stays: a correction is a new row that holds from the same day. */
@Service
public class WarrantyTermsService {

    private final WarrantyTermsRepository store;
    private final Trail trail;
    private final Clock clock;

    WarrantyTermsService(WarrantyTermsRepository store, Trail trail, Clock clock) {
        this.store = store;
        this.trail = trail;
        this.clock = clock;
    }

    /** Every row ever recorded: those by chemistry first, then by type; of each the newest first. Anybody may read them. */
    @Transactional(readOnly = true)
    public List<WarrantyTermsEntry> all() {
        return store.all();
    }

    /**
     * The terms for a battery sold on that day: those of its type, else those of its chemistry.
     *
     * @param batteryType empty where it is not known
     * @param chemistry null where it is not known
     */
    @Transactional(readOnly = true)
    public Optional<WarrantyTermsEntry> inForce(
            Optional<String> batteryType, Chemistry chemistry, UseClass use, LocalDate soldOn) {
        return batteryType
                .flatMap(type -> store.inForce("battery_type", type, use, soldOn))
                .or(() -> Optional.ofNullable(chemistry)
                        .flatMap(known -> store.inForce("chemistry", known.id(), use, soldOn)));
    }

    /**
     * Records terms. For {@code ADMIN}.
     *
     * @throws AccessDeniedException for other roles
     * @throws RequestException if a field cannot be right
     */
    @Transactional
    public WarrantyTermsEntry record(Actor actor, WarrantyTermsForm.Form form) {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator sets warranty terms");
        }
        WarrantyTermsForm wanted = WarrantyTermsForm.read(form);
        WarrantyTermsEntry terms = new WarrantyTermsEntry(
                UUID.randomUUID(),
                wanted.batteryType(),
                wanted.chemistry(),
                wanted.use(),
                wanted.validFrom(),
                wanted.freeMonths(),
                wanted.proRata(),
                wanted.mileageKm(),
                wanted.reason(),
                clock.instant(),
                actor.user());
        Optional<WarrantyTermsEntry> before =
                inForce(wanted.batteryType(), wanted.chemistry().orElse(null), wanted.use(), wanted.validFrom());
        store.append(terms);
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("terms.use", terms.use().id());
        details.put("terms.validFrom", terms.validFrom().toString());
        details.put(
                "terms.text",
                before.<Object>map(old -> Map.of("old", text(old), "new", text(terms)))
                        .orElseGet(() -> text(terms)));
        details.put("claim.reason", terms.reason());
        trail.record(actor, "terms-recorded", terms.scope(), details);
        return terms;
    }

    /** Terms on one line, for the trail: {@code 24 free; 36: 50; 48: 25; 100000 km}. */
    static String text(WarrantyTermsEntry terms) {
        StringBuilder text = new StringBuilder(terms.freeMonths() + " free");
        terms.proRata()
                .forEach(row -> text.append("; ")
                        .append(row.throughMonth())
                        .append(": ")
                        .append(row.percent().stripTrailingZeros().toPlainString()));
        terms.mileageKm().ifPresent(km -> text.append("; ").append(km).append(" km"));
        return text.toString();
    }
}
