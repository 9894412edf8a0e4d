package org.voltdocket.worlds.ceraolo;

import org.voltdocket.worlds.Alternator;

/** An alternator whose output rises with engine speed as 1 − exp (ours; the shape is common practice). */
record ExponentialAlternator(double ratedA, double risesAPerS, double rippleV) implements Alternator {

    @Override
    public double most(double rpm) {
        return rpm < 450 ? 0 : ratedA * (1 - StrictMath.exp(-(rpm - 300) / 600));
    }
}
