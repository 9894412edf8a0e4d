package org.voltdocket.demo;

import org.voltdocket.diagnosis.Cause;

/** The true fault of an invented vehicle. */
public enum Scenario {
    CELL_SHORTED(Cause.BATTERY_DEFECT),
    STRAP_BROKEN(Cause.BATTERY_DEFECT),
    WILL_NOT_HOLD(Cause.BATTERY_DEFECT),
    WORN(Cause.BATTERY_WORN),
    SOURCE_DEAD(Cause.CHARGING_SOURCE),
    SOURCE_WEAK(Cause.CHARGING_SOURCE),
    SOURCE_OVER(Cause.CHARGING_SOURCE),
    SOURCE_SLIPPING(Cause.CHARGING_SOURCE),
    /** A slow discharge is taken for a charge: the controller rests while the battery runs down. */
    SENSOR_READS_HIGH(Cause.CURRENT_SENSOR),
    /** A charge is taken for a discharge: the controller never stops charging. */
    SENSOR_READS_LOW(Cause.CURRENT_SENSOR),
    CONTROL_STUCK(Cause.CHARGE_CONTROL),
    CABLE_RESISTANCE(Cause.WIRING),
    DRAINED_AT_REST(Cause.STANDING_DRAIN),
    SHORT_TRIPS(Cause.DUTY),
    WRONG_TYPE(Cause.MISFIT),
    TOO_SMALL(Cause.MISFIT),
    /** Rests at a low voltage on purpose. */
    HEALTHY_MANAGED(Cause.NONE),
    HEALTHY_CONVENTIONAL(Cause.NONE);

    private final Cause cause;

    Scenario(Cause cause) {
        this.cause = cause;
    }

    /** The cause that a case of this kind truly has. */
    public Cause cause() {
        return cause;
    }
}
