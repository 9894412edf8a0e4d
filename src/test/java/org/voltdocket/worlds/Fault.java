package org.voltdocket.worlds;

import java.util.Arrays;
import org.voltdocket.diagnosis.Cause;

/** What is wrong in a case. Charge ranges are those in which such a car arrives (ours). */
public enum Fault {
    HEALTHY_CONVENTIONAL("healthy-conventional", Cause.NONE, 0.80, 0.99),
    HEALTHY_MANAGED("healthy-managed", Cause.NONE, 0.70, 0.90),
    HEALTHY_OLD("healthy-old", Cause.NONE, 0.75, 0.97),
    HEALTHY_COLD("healthy-cold", Cause.NONE, 0.70, 0.95),
    CELL_LOST("cell-lost", Cause.BATTERY_DEFECT, 0.45, 0.90),
    JOINT_BROKEN("joint-broken", Cause.BATTERY_DEFECT, 0.60, 0.95),
    WORN("worn", Cause.BATTERY_WORN, 0.50, 0.95),
    SOURCE_DEAD("source-dead", Cause.CHARGING_SOURCE, 0.45, 0.85),
    SOURCE_WEAK("source-weak", Cause.CHARGING_SOURCE, 0.35, 0.75),
    SOURCE_STOPS("source-stops", Cause.CHARGING_SOURCE, 0.40, 0.80),
    SOURCE_OVER("source-over", Cause.CHARGING_SOURCE, 0.92, 1.00),
    BELT_SLIPS("belt-slips", Cause.CHARGING_SOURCE, 0.40, 0.80),
    SENSOR_HIGH("sensor-high", Cause.CURRENT_SENSOR, 0.30, 0.65),
    SENSOR_LOW("sensor-low", Cause.CURRENT_SENSOR, 0.92, 1.00),
    CONTROL_LOW("control-low", Cause.CHARGE_CONTROL, 0.30, 0.70),
    CONTROL_HIGH("control-high", Cause.CHARGE_CONTROL, 0.92, 1.00),
    CHARGE_CABLE("charge-cable", Cause.WIRING, 0.40, 0.80),
    MAIN_CABLE("main-cable", Cause.WIRING, 0.45, 0.90),
    DRAIN("drain", Cause.STANDING_DRAIN, 0.25, 0.70),
    SHORT_TRIPS("short-trips", Cause.DUTY, 0.35, 0.70),
    WRONG_SIZE("wrong-size", Cause.MISFIT, 0.50, 0.90),
    WRONG_TYPE("wrong-type", Cause.MISFIT, 0.50, 0.90);

    private final String id;
    private final Cause cause;
    final double chargeFrom;
    final double chargeTo;

    Fault(String id, Cause cause, double chargeFrom, double chargeTo) {
        this.id = id;
        this.cause = cause;
        this.chargeFrom = chargeFrom;
        this.chargeTo = chargeTo;
    }

    /** The name in reports and on the command line. */
    public String id() {
        return id;
    }

    /** The cause that is right. */
    public Cause cause() {
        return cause;
    }

    /** Whether the battery is bad. */
    public boolean ofBattery() {
        return cause == Cause.BATTERY_DEFECT || cause == Cause.BATTERY_WORN;
    }

    /**
     * The fault of this name.
     *
     * @throws IllegalArgumentException if there is none
     */
    static Fault of(String id) {
        return Arrays.stream(values())
                .filter(f -> f.id.equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("No fault '" + id + "'."));
    }
}
