package org.voltdocket.casefile;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.History;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;

/** Which cases share a battery or a vehicle: all of them for the judge, the visible ones for a person. */
@Component
class RelatedCaseRepository {

    private final CaseRepository rows;
    private final CaseVisibility visibility;

    RelatedCaseRepository(CaseRepository rows, CaseVisibility visibility) {
        this.rows = rows;
        this.visibility = visibility;
    }

    History history(UUID caseId) {
        CaseReference self = rows.findById(caseId)
                .orElseThrow(() -> RequestException.notFound("such case"))
                .ref();
        Set<String> batteries = new TreeSet<>();
        Set<String> vehicles = new TreeSet<>();
        for (CaseEntity other : rows.relatives(caseId)) {
            if (other.ref().vin().equals(self.vin())) {
                batteries.add(other.ref().serial().value());
            } else {
                vehicles.add(other.ref().vin().value());
            }
        }
        return new History(List.copyOf(batteries), List.copyOf(vehicles));
    }

    RelatedCases relatives(Actor actor, CaseReference self) {
        List<CaseEntity> others = rows.relatives(self.id());
        Set<UUID> visible =
                visibility.visible(actor, others.stream().map(CaseEntity::id).toList());
        Map<Boolean, List<CaseEntity>> byVehicle = others.stream()
                .collect(Collectors.partitioningBy(row -> row.ref().vin().equals(self.vin())));
        Function<List<CaseEntity>, List<CaseListItem>> shown = all -> all.stream()
                .filter(row -> visible.contains(row.id()))
                .map(CaseEntity::line)
                .toList();
        List<CaseListItem> sameVehicle = shown.apply(byVehicle.get(true));
        List<CaseListItem> sameBattery = shown.apply(byVehicle.get(false));
        return new RelatedCases(
                sameVehicle,
                byVehicle.get(true).size() - sameVehicle.size(),
                sameBattery,
                byVehicle.get(false).size() - sameBattery.size());
    }

    List<CaseListItem> ofBattery(Actor actor, BatterySerial serial) {
        return visibleOf(
                actor, rows.findByBatterySerialOrderByOpenedAtDescIdDesc(serial.value()), "case of battery " + serial);
    }

    List<CaseListItem> ofVehicle(Actor actor, Vin vin) {
        return visibleOf(actor, rows.findByVinOrderByOpenedAtDescIdDesc(vin.value()), "case of vehicle " + vin);
    }

    private List<CaseListItem> visibleOf(Actor actor, List<CaseEntity> all, String what) {
        Set<UUID> visible =
                visibility.visible(actor, all.stream().map(CaseEntity::id).toList());
        List<CaseListItem> shown = all.stream()
                .filter(row -> visible.contains(row.id()))
                .map(CaseEntity::line)
                .toList();
        if (shown.isEmpty()) {
            throw RequestException.notFound(what);
        }
        return shown;
    }
}
