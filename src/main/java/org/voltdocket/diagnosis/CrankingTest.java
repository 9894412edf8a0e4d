package org.voltdocket.diagnosis;

import java.time.OffsetDateTime;

/**
 * A start of the engine, measured with a voltmeter at the posts.
 *
 * @param minimumVoltageV least V while cranking, 0 to 20
 * @param durationS how long the starter turned, s; may be null
 * @param temperatureC °C, -40 to 80
 * @param instrument may be null
 */
public record CrankingTest(
        OffsetDateTime takenAt,
        double minimumVoltageV,
        Double durationS,
        double temperatureC,
        BatteryTest.Instrument instrument)
        implements Reading {

    @Override
    public EvidenceKind kind() {
        return EvidenceKind.CRANKING_TEST;
    }
}
