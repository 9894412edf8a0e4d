package org.voltdocket.evidence.waveform;

/** How coarse an outline is; a recording has one for each scale that its sampling and length carry. */
public enum Scale {
    /** Starts sampled fast. */
    START(0.05),
    /** Drives. */
    DRIVE(2),
    /** A night asleep, a capacity run. */
    NIGHT(60);

    private final double stepS;

    Scale(double stepS) {
        this.stepS = stepS;
    }

    /** Length of a step, s. */
    public double stepS() {
        return stepS;
    }
}
