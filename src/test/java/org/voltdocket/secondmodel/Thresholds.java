package org.voltdocket.secondmodel;

/** What the judge must reach on generated cases; the one place where these numbers stand. Shares are 0 to 1. */
final class Thresholds {

    static final int SEEDS = 3;
    static final double FIRST_CAUSE_RIGHT = 0.90;
    static final double HEALTHY_BLAMED_AT_MOST = 0.0;
    static final double VEHICLE_FAULTS_FOUND = 0.90;
    static final double REGIMES_RIGHT = 0.90;
    static final double REGIMES_RIGHT_FROM_VOLTAGE = 0.80;
    static final double OFFSET_COVERED = 0.85;
    static final double BRIER_AT_MOST = 0.10;

    private Thresholds() {}
}
