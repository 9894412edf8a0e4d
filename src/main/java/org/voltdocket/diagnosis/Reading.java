package org.voltdocket.diagnosis;

/** What was read from one item of evidence; parsed once at the door and trusted afterwards. */
public sealed interface Reading permits BatteryTest, CrankingTest, ChargingTest, Recording {

    /** What kind of evidence this is. */
    EvidenceKind kind();
}
