package org.voltdocket.returned.service;

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
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnListRepository;
import org.voltdocket.returned.ReturnRepository;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.pallet.PalletRepository;

/** Reads a return with everything recorded for it. */
@Component
class ReturnReader {

    private final ReturnRepository returns;
    private final ReturnHistoryRepository history;
    private final PalletRepository pallets;
    private final CaseService cases;
    private final EvidenceArchive archive;
    private final CatalogueService catalogue;
    private final Clock clock;

    ReturnReader(
            ReturnRepository returns,
            ReturnHistoryRepository history,
            PalletRepository pallets,
            CaseService cases,
            EvidenceArchive archive,
            CatalogueService catalogue,
            Clock clock) {
        this.returns = returns;
        this.history = history;
        this.pallets = pallets;
        this.cases = cases;
        this.archive = archive;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /** Locks the return until the transaction ends, so that changes to it happen one after another. */
    ReturnedBattery lockAndRead(Actor actor, UUID id) {
        returns.lock(id);
        return read(actor, id);
    }

    /** The latest outcome of the battery of this case. */
    Optional<RecordedOutcome> outcomeOf(Actor actor, UUID caseId) {
        cases.require(actor, caseId);
        return returns.ofCase(caseId).stream()
                .flatMap(id -> history.outcomes(id).stream())
                .reduce((first, last) -> last);
    }

    ReturnedBattery read(Actor actor, UUID id) {
        ReturnRepository.Row row = returns.find(id).orElseThrow(() -> RequestException.notFound("returned battery"));
        List<CaseListItem> found = cases(actor, row.serial());
        Optional<CaseReference> file = returns.chosen(id)
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
                warnings(actor, row.serial(), found, row.palletId(), Optional.of(id)),
                file,
                found,
                file.map(ref -> cases.facts(ref.id()).facts().battery()).orElse(BatteryFacts.UNKNOWN),
                row.supplier(),
                row.type(),
                row.batch(),
                history.conditions(id),
                history.places(id),
                history.steps(id),
                file.map(ref -> evidence(id, ref)).orElse(List.of()),
                history.outcomes(id));
    }

    private List<EvidenceItem> evidence(UUID id, CaseReference file) {
        Set<UUID> own = new HashSet<>(returns.evidence(id));
        return own.isEmpty()
                ? List.of()
                : archive.ofCase(file.id()).stream()
                        .filter(item -> own.contains(item.id()))
                        .toList();
    }

    /** Every case of a battery, newest first. */
    List<CaseListItem> cases(Actor actor, BatterySerial serial) {
        // a refusal inside ofBattery would roll back the surrounding transaction
        return returns.hasCase(serial) ? cases.ofBattery(actor, serial) : List.of();
    }

    /** @param self the return itself, where it is registered already */
    List<ArrivalWarning> warnings(
            Actor actor, BatterySerial serial, List<CaseListItem> found, Optional<UUID> pallet, Optional<UUID> self) {
        List<ArrivalWarning> warnings = new ArrayList<>();
        if (found.isEmpty()) {
            warnings.add(ArrivalWarning.NO_CASE);
        } else if (found.size() > 1) {
            warnings.add(ArrivalWarning.SEVERAL_CASES);
        }
        if (!sold(serial, found)) {
            warnings.add(ArrivalWarning.NEVER_SOLD);
        }
        if (pallet.filter(id -> !pallets.lists(id, serial)).isPresent()) {
            warnings.add(ArrivalWarning.NOT_ON_LIST);
        }
        if (returns.wasHere(serial, self.orElse(new UUID(0, 0)))) {
            warnings.add(ArrivalWarning.HERE_BEFORE);
        }
        return warnings;
    }

    /** Whether a case states the date of sale, or the sales figures say that batteries of its batch were sold. */
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
