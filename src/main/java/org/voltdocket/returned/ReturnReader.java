package org.voltdocket.returned;

import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;

/** Reads a return with all that hangs on it. */
@Component
class ReturnReader {

    private final ReturnRepository store;
    private final ReturnHistoryRepository notes;
    private final PalletRepository pallets;
    private final CaseService cases;
    private final EvidenceArchive archive;
    private final CatalogueService catalogue;
    private final Clock clock;

    ReturnReader(
            ReturnRepository store,
            ReturnHistoryRepository notes,
            PalletRepository pallets,
            CaseService cases,
            EvidenceArchive archive,
            CatalogueService catalogue,
            Clock clock) {
        this.store = store;
        this.notes = notes;
        this.pallets = pallets;
        this.cases = cases;
        this.archive = archive;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    ReturnedBattery read(Actor actor, UUID id) {
        ReturnRepository.Row row = store.find(id).orElseThrow(() -> new NotFoundException("returned battery"));
        List<CaseListItem> found = cases(actor, row.serial());
        Optional<CaseReference> file = store.chosen(id)
                .map(caseId -> cases.require(actor, caseId))
                .or(() -> found.stream().map(CaseListItem::ref).findFirst());
        return new ReturnedBattery(
                id,
                row.number(),
                row.serial(),
                row.pallet(),
                row.arrivedAt(),
                row.bookedBy(),
                ReturnListRepository.days(row.arrivedAt(), clock.instant()),
                told(actor, row.serial(), found, row.palletId(), Optional.of(id)),
                file,
                found,
                file.map(ref -> cases.facts(ref.id()).facts().battery()).orElse(BatteryFacts.UNKNOWN),
                row.supplier(),
                row.type(),
                row.batch(),
                notes.conditions(id),
                notes.places(id),
                notes.steps(id),
                file.map(ref -> evidence(id, ref)).orElse(List.of()),
                notes.outcomes(id));
    }

    private List<EvidenceItem> evidence(UUID id, CaseReference file) {
        Set<UUID> own = new HashSet<>(store.evidence(id));
        return own.isEmpty()
                ? List.of()
                : archive.ofCase(file.id()).stream()
                        .filter(item -> own.contains(item.id()))
                        .toList();
    }

    /** Every case of a battery, newest first. */
    List<CaseListItem> cases(Actor actor, BatterySerial serial) {
        // asked first: a refusal inside would end the transaction around
        return store.hasCase(serial) ? cases.ofBattery(actor, serial) : List.of();
    }

    /** @param self the return that is asked about, if it is there already */
    List<ArrivalWarning> told(
            Actor actor, BatterySerial serial, List<CaseListItem> found, Optional<UUID> pallet, Optional<UUID> self) {
        List<ArrivalWarning> told = new ArrayList<>();
        if (found.isEmpty()) {
            told.add(ArrivalWarning.NO_CASE);
        } else if (found.size() > 1) {
            told.add(ArrivalWarning.SEVERAL_CASES);
        }
        if (!sold(serial, found)) {
            told.add(ArrivalWarning.NEVER_SOLD);
        }
        if (pallet.filter(id -> !pallets.lists(id, serial)).isPresent()) {
            told.add(ArrivalWarning.NOT_ON_LIST);
        }
        if (store.wasHere(serial, self.orElse(new UUID(0, 0)))) {
            told.add(ArrivalWarning.HERE_BEFORE);
        }
        return told;
    }

    /** A case says when, or the sales register knows that its batch was sold at all. */
    private boolean sold(BatterySerial serial, List<CaseListItem> found) {
        return found.stream()
                        .anyMatch(line ->
                                cases.facts(line.ref().id()).facts().battery().soldOn() != null)
                || product(serial)
                        .filter(product -> catalogue.sales(product.type().code()).stream()
                                .anyMatch(month -> month.batch().equals(product.batch()) && month.sold() > 0))
                        .isPresent();
    }

    Optional<Product> product(BatterySerial serial) {
        return catalogue.of(serial);
    }
}
