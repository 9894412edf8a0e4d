package org.voltdocket.diagnosis;

/** The content of one item of evidence, parsed and validated. */
public sealed interface Reading permits BatteryTest, CrankingTest, ChargingTest, Recording {

    /** What kind of evidence this is. */
    EvidenceKind kind();
}
