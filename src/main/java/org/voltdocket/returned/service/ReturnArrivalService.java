package org.voltdocket.returned.service;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.returned.ArrivalResult;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnRepository;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.pallet.PalletRepository;

/** Registers returned batteries and assigns them to cases. Locks in this order: serial, return, trail. */
@Service
@Transactional
class ReturnArrivalService {

    private final ReturnRepository returns;
    private final PalletRepository pallets;
    private final ReturnReader reader;
    private final AssessmentService assessments;
    private final CaseService cases;
    private final ReturnTrail trail;
    private final Clock clock;

    ReturnArrivalService(
            ReturnRepository returns,
            PalletRepository pallets,
            ReturnReader reader,
            AssessmentService assessments,
            CaseService cases,
            ReturnTrail trail,
            Clock clock) {
        this.returns = returns;
        this.pallets = pallets;
        this.reader = reader;
        this.assessments = assessments;
        this.cases = cases;
        this.trail = trail;
        this.clock = clock;
    }

    ArrivalResult arrive(Actor actor, BatterySerial serial, Optional<String> palletNumber) {
        Optional<PalletRepository.Row> pallet = palletNumber.map(number -> pallets.find(number)
                .orElseThrow(() -> ReturnErrors.invalid(
                        "pallet", "'pallet' is the number of a registered pallet; read '" + number + "'")));
        returns.lock(serial);
        Optional<ReturnRepository.Row> open = returns.open(serial);
        if (open.isPresent()) {
            return new ArrivalResult(false, reader.read(actor, open.get().id()));
        }
        List<CaseListItem> found = reader.cases(actor, serial);
        List<ArrivalWarning> warnings =
                reader.warnings(actor, serial, found, pallet.map(PalletRepository.Row::id), Optional.empty());
        UUID id = returns.add(
                serial,
                pallet.map(PalletRepository.Row::id).orElse(null),
                pallet.map(row -> arrival(row.arrivedOn())).orElse(now()),
                actor.user(),
                warnings,
                reader.product(serial));
        if (!found.isEmpty()) {
            assign(actor, id, found.get(0).ref());
        }
        ReturnedBattery battery = reader.read(actor, id);
        Map<String, Object> details = new LinkedHashMap<>();
        details.put("batterySerial", serial.value());
        battery.pallet().ifPresent(number -> details.put("return.pallet", number));
        details.put("return.warnings", warnings.stream().map(ArrivalWarning::id).toList());
        trail.record(actor, "return-arrived", battery, details);
        return new ArrivalResult(true, battery);
    }

    /** Noon of the pallet's day, but never a time in the future. */
    private Instant arrival(LocalDate day) {
        Instant noon = day.atTime(12, 0).toInstant(ZoneOffset.UTC);
        return noon.isAfter(now()) ? now() : noon;
    }

    ReturnedBattery assignCase(Actor actor, UUID id, CaseNumber number) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        CaseReference ref = cases.require(actor, number);
        if (!ref.serial().equals(battery.serial())) {
            throw ReturnErrors.invalid(
                    "case", "case " + number + " is of battery " + ref.serial() + ", not of " + battery.serial());
        }
        if (battery.file().filter(ref::equals).isPresent()) {
            return battery;
        }
        if (!battery.evidence().isEmpty()) {
            throw ReturnErrors.caseFixed(battery);
        }
        assign(actor, id, ref);
        ReturnedBattery after = reader.read(actor, id);
        trail.record(actor, "return-case-chosen", after, Map.of("return.case", number.value()));
        return after;
    }

    /** The case that bench evidence goes to; from now on the return stays with it. */
    CaseReference fixCase(Actor actor, UUID id) {
        ReturnedBattery battery = reader.lockAndRead(actor, id);
        fixCase(actor, battery);
        return battery.file().orElseThrow(() -> ReturnErrors.noCase(battery));
    }

    /** Stores the case found on reading, where a case was found and none is stored yet. */
    void fixCase(Actor actor, ReturnedBattery battery) {
        battery.file()
                .filter(ref -> returns.chosen(battery.id()).isEmpty())
                .ifPresent(ref -> assign(actor, battery.id(), ref));
    }

    private void assign(Actor actor, UUID id, CaseReference ref) {
        UUID before = assessments.latest(ref.id()).map(StoredAssessment::id).orElse(null);
        returns.choose(id, ref.id(), before, now(), actor.user());
    }

    void addEvidence(UUID id, UUID evidence) {
        returns.addEvidence(id, evidence);
    }

    private Instant now() {
        return clock.instant();
    }
}
