package org.voltdocket.diagnosis;

import java.time.LocalDate;
import java.time.OffsetDateTime;

/**
 * A test of the battery at rest. {@code takenAt}, {@code restVoltageV} and {@code temperatureC} are always present; the
 * other components may be null: not known.
 *
 * @param restVoltageV V at the posts, engine off, 0 to 20
 * @param temperatureC battery temperature, °C, -40 to 80
 * @param crankingCurrentA cranking current the instrument estimates, A, by {@code crankingStandard}
 * @param internalResistanceMilliohm mΩ
 * @param hoursSinceEngineStop h
 * @param chargedBefore whether the battery was charged on a charger before this test
 */
public record BatteryTest(
        OffsetDateTime takenAt,
        double restVoltageV,
        double temperatureC,
        Double crankingCurrentA,
        CrankingStandard crankingStandard,
        Double internalResistanceMilliohm,
        Double hoursSinceEngineStop,
        Boolean chargedBefore,
        Instrument instrument)
        implements Reading {

    /**
     * The instrument a test was taken with.
     *
     * @param serial its serial, may be null
     * @param calibratedOn day of its last calibration, may be null
     */
    public record Instrument(String serial, LocalDate calibratedOn) {}

    @Override
    public EvidenceKind kind() {
        return EvidenceKind.BATTERY_TEST;
    }
}
