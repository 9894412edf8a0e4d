package org.voltdocket.casefile;

import java.util.List;

/**
 * Other cases of the same vehicle or the same battery, as one may see them, newest first.
 *
 * @param sameVehicle other batteries in this vehicle
 * @param sameVehicleElsewhere how many more there are that the asker may not see
 * @param sameBattery other vehicles of this battery
 * @param sameBatteryElsewhere how many more there are that the asker may not see
 */
public record RelatedCases(
        List<CaseListItem> sameVehicle,
        int sameVehicleElsewhere,
        List<CaseListItem> sameBattery,
        int sameBatteryElsewhere) {

    public RelatedCases {
        sameVehicle = List.copyOf(sameVehicle);
        sameBattery = List.copyOf(sameBattery);
    }
}
