package org.voltdocket.secondmodel;

/**
 * A charging source: a current source limited by engine speed, following its command with the lag of its field and a
 * ramp on rising load.
 */
final class Alternator {

    private final double mostA;
    private final double cutInRpm;
    private final double lagS;
    private final double rampAPerS;
    private double current;

    /**
     * @param mostA most current at high speed, A; 0 for a dead one
     * @param cutInRpm engine speed it starts to deliver at, 1/min
     */
    Alternator(double mostA, double cutInRpm, double lagS, double rampAPerS) {
        this.mostA = mostA;
        this.cutInRpm = cutInRpm;
        this.lagS = lagS;
        this.rampAPerS = rampAPerS;
    }

    /** Most it can deliver at this engine speed, A. */
    double limit(double rpm) {
        return rpm <= cutInRpm ? 0 : mostA * (1 - Math.exp(-(rpm - cutInRpm) / 700));
    }

    /** Current after {@code dt} s more, asked for {@code wish} A. */
    double deliver(double wish, double rpm, double dt) {
        double bound = Math.max(0, Math.min(limit(rpm), wish));
        double next = current + (bound - current) * Math.min(1, dt / lagS);
        current = Math.min(Math.min(next, current + rampAPerS * dt), limit(rpm));
        return current;
    }

    void stop() {
        current = 0;
    }
}
