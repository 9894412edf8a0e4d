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
import org.voltdocket.kernel.Vin;

/** Which cases share a battery or a vehicle: all of them for the judge, the visible ones for a person. */
@Component
class Kin {

    private final CaseRows rows;
    private final Visibility visibility;

    Kin(CaseRows rows, Visibility visibility) {
        this.rows = rows;
        this.visibility = visibility;
    }

    History history(UUID caseId) {
        CaseRef self = rows.findById(caseId)
                .orElseThrow(() -> new NotVisible("such case"))
                .ref();
        Set<String> batteries = new TreeSet<>();
        Set<String> vehicles = new TreeSet<>();
        for (CaseRow other : rows.relatives(caseId)) {
            if (other.ref().vin().equals(self.vin())) {
                batteries.add(other.ref().serial().value());
            } else {
                vehicles.add(other.ref().vin().value());
            }
        }
        return new History(List.copyOf(batteries), List.copyOf(vehicles));
    }

    Relatives relatives(Actor actor, CaseRef self) {
        List<CaseRow> others = rows.relatives(self.id());
        Set<UUID> visible =
                visibility.visible(actor, others.stream().map(CaseRow::id).toList());
        Map<Boolean, List<CaseRow>> byVehicle = others.stream()
                .collect(Collectors.partitioningBy(row -> row.ref().vin().equals(self.vin())));
        Function<List<CaseRow>, List<CaseLine>> shown = all -> all.stream()
                .filter(row -> visible.contains(row.id()))
                .map(CaseRow::line)
                .toList();
        List<CaseLine> sameVehicle = shown.apply(byVehicle.get(true));
        List<CaseLine> sameBattery = shown.apply(byVehicle.get(false));
        return new Relatives(
                sameVehicle,
                byVehicle.get(true).size() - sameVehicle.size(),
                sameBattery,
                byVehicle.get(false).size() - sameBattery.size());
    }

    List<CaseLine> ofBattery(Actor actor, BatterySerial serial) {
        return visibleOf(
                actor, rows.findByBatterySerialOrderByOpenedAtDescIdDesc(serial.value()), "case of battery " + serial);
    }

    List<CaseLine> ofVehicle(Actor actor, Vin vin) {
        return visibleOf(actor, rows.findByVinOrderByOpenedAtDescIdDesc(vin.value()), "case of vehicle " + vin);
    }

    private List<CaseLine> visibleOf(Actor actor, List<CaseRow> all, String what) {
        Set<UUID> visible =
                visibility.visible(actor, all.stream().map(CaseRow::id).toList());
        List<CaseLine> shown = all.stream()
                .filter(row -> visible.contains(row.id()))
                .map(CaseRow::line)
                .toList();
        if (shown.isEmpty()) {
            throw new NotVisible(what);
        }
        return shown;
    }
}
