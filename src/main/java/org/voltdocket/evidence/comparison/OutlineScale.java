package org.voltdocket.evidence.comparison;

/** Resolution in time of an outline; a recording has one outline for each scale that its sampling and length allow. */
public enum OutlineScale {
    /** Starts sampled fast. */
    START(0.05),
    /** Drives. */
    DRIVE(2),
    /** A parked night, a capacity test. */
    NIGHT(60);

    private final double stepS;

    OutlineScale(double stepS) {
        this.stepS = stepS;
    }

    /** Length of a step, s. */
    public double stepS() {
        return stepS;
    }
}
