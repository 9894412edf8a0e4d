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
public record Relatives(
        List<CaseLine> sameVehicle, int sameVehicleElsewhere, List<CaseLine> sameBattery, int sameBatteryElsewhere) {

    public Relatives {
        sameVehicle = List.copyOf(sameVehicle);
        sameBattery = List.copyOf(sameBattery);
    }
}
