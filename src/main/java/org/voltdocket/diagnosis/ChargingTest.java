package org.voltdocket.diagnosis;

import java.time.OffsetDateTime;

/**
 * Voltages at the posts with the engine running.
 *
 * @param idleVoltageV V, engine running, no extra load; may be null if {@code loadedVoltageV} is known
 * @param loadedVoltageV V, lamps and blower on, about 1500 to 2000 1/min; may be null if {@code idleVoltageV} is known
 * @param ripplePeakToPeakV V peak to peak, 0 to 10; may be null
 * @param temperatureC °C, -40 to 120
 * @param instrument may be null
 */
public record ChargingTest(
        OffsetDateTime takenAt,
        Double idleVoltageV,
        Double loadedVoltageV,
        Double ripplePeakToPeakV,
        double temperatureC,
        BatteryTest.Instrument instrument)
        implements Reading {

    @Override
    public EvidenceKind kind() {
        return EvidenceKind.CHARGING_TEST;
    }
}
