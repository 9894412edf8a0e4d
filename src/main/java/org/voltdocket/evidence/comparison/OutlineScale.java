package org.voltdocket.evidence.comparison;

/** How coarse an outline is; a recording has one for each scale that its sampling and length carry. */
public enum OutlineScale {
    /** Starts sampled fast. */
    START(0.05),
    /** Drives. */
    DRIVE(2),
    /** A night asleep, a capacity run. */
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
