package org.voltdocket.secondmodel;

/**
 * What the judge must reach on the few generated cases of the test; the one place where these numbers stand. They lie
 * just under what it reaches, so that a step back shows; they only ever go up. Shares are 0 to 1.
 */
final class Thresholds {

    static final int SEEDS = 3;
    static final double FIRST_CAUSE_RIGHT = 0.94;
    static final double HEALTHY_BLAMED_AT_MOST = 0.01;
    static final double VEHICLE_FAULTS_FOUND = 0.95;
    static final double REGIMES_RIGHT = 0.95;
    static final double REGIMES_RIGHT_FROM_VOLTAGE = 0.78;
    static final double OFFSET_COVERED = 0.86;
    static final double BRIER_AT_MOST = 0.05;

    private Thresholds() {}
}
