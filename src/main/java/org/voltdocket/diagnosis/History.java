package org.voltdocket.diagnosis;

import java.util.List;

/**
 * What other cases say of this battery and this vehicle.
 *
 * @param batteriesInVehicle serials of other batteries with a case in the same vehicle, sorted
 * @param vehiclesOfBattery VINs of other vehicles with a case of the same battery, sorted
 */
public record History(List<String> batteriesInVehicle, List<String> vehiclesOfBattery) {

    /** No other case. */
    public static final History NONE = new History(List.of(), List.of());

    public History {
        batteriesInVehicle = List.copyOf(batteriesInVehicle);
        vehiclesOfBattery = List.copyOf(vehiclesOfBattery);
    }
}
