package org.voltdocket.worlds;

import java.time.OffsetDateTime;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;

/** What a workshop measures with, errors included. */
public interface Instruments {

    /**
     * @param resting the battery as it is connected to the instrument
     * @param hoursStill h since the engine stopped or the charger was taken off
     * @param charged whether it was on a charger
     */
    BatteryTest battery(
            OffsetDateTime at, BatteryModel resting, Setup setup, double hoursStill, boolean charged, Chance chance);

    /**
     * @param start trace of a start alone
     */
    CrankingTest cranking(OffsetDateTime at, Trace start, double crankS, Setup setup, Chance chance);

    /**
     * @param idle trace of the idling engine, settled at its end
     * @param loaded the same at raised speed with all consumers on
     */
    ChargingTest charging(OffsetDateTime at, Trace idle, Trace loaded, Setup setup, Chance chance);
}
