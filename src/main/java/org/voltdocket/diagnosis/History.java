package org.voltdocket.diagnosis;

import java.util.List;
import org.voltdocket.kernel.Sha256;

/**
 * Other cases of this battery and this vehicle.
 *
 * @param batteriesInVehicle serials of other batteries with a case in the same vehicle, sorted
 * @param vehiclesOfBattery VINs of other vehicles with a case of the same battery, sorted
 * @param underAnotherSerial digests of this case's recordings whose course of voltage lies in a case of another battery
 *     too, sorted
 */
public record History(
        List<String> batteriesInVehicle, List<String> vehiclesOfBattery, List<Sha256> underAnotherSerial) {

    /** No other case. */
    public static final History NONE = new History(List.of(), List.of(), List.of());

    public History {
        batteriesInVehicle = List.copyOf(batteriesInVehicle);
        vehiclesOfBattery = List.copyOf(vehiclesOfBattery);
        underAnotherSerial = List.copyOf(underAnotherSerial);
    }

    /** Without recordings found elsewhere. */
    public History(List<String> batteriesInVehicle, List<String> vehiclesOfBattery) {
        this(batteriesInVehicle, vehiclesOfBattery, List.of());
    }

    /** The same with recordings found elsewhere. */
    public History with(List<Sha256> recordingsUnderAnotherSerial) {
        return new History(batteriesInVehicle, vehiclesOfBattery, recordingsUnderAnotherSerial);
    }
}
