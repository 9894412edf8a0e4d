package org.voltdocket.secondmodel;

import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;

/** What is wrong in a generated case. */
enum Scenario {
    HEALTHY_MANAGED("healthy-managed", Cause.NONE, Leaning.NO_FAULT_SEEN),
    HEALTHY_CONVENTIONAL("healthy-conventional", Cause.NONE, Leaning.NO_FAULT_SEEN),
    SENSOR_HIGH("sensor-high", Cause.CURRENT_SENSOR, Leaning.VEHICLE_SIDE),
    SENSOR_LOW("sensor-low", Cause.CURRENT_SENSOR, Leaning.VEHICLE_SIDE),
    SOURCE_DEAD("source-dead", Cause.CHARGING_SOURCE, Leaning.VEHICLE_SIDE),
    SOURCE_WEAK("source-weak", Cause.CHARGING_SOURCE, Leaning.VEHICLE_SIDE),
    SOURCE_OVER("source-over", Cause.CHARGING_SOURCE, Leaning.VEHICLE_SIDE),
    CONTROL("control", Cause.CHARGE_CONTROL, Leaning.VEHICLE_SIDE),
    WIRING("wiring", Cause.WIRING, Leaning.VEHICLE_SIDE),
    DRAIN("drain", Cause.STANDING_DRAIN, Leaning.VEHICLE_SIDE),
    DUTY("duty", Cause.DUTY, Leaning.USAGE_SIDE),
    WORN("worn", Cause.BATTERY_WORN, Leaning.BATTERY_SIDE),
    DEFECT("defect", Cause.BATTERY_DEFECT, Leaning.BATTERY_SIDE);

    final String id;
    final Cause cause;
    final List<Leaning> leanings;

    Scenario(String id, Cause cause, Leaning... leanings) {
        this.id = id;
        this.cause = cause;
        this.leanings = List.of(leanings);
    }

    static Scenario of(String id) {
        return Arrays.stream(values())
                .filter(s -> s.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("No scenario '" + id + "'."));
    }
}
