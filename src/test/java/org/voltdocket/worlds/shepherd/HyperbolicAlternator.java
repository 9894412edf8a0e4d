package org.voltdocket.worlds.shepherd;

import org.voltdocket.worlds.Alternator;

/** An alternator whose output rises with engine speed as (n − n0) / (n + n1) (ours; the shape is common practice). */
record HyperbolicAlternator(double ratedA, double risesAPerS, double rippleV) implements Alternator {

    @Override
    public double most(double rpm) {
        return rpm < 550 ? 0 : ratedA * (rpm - 250) / (rpm + 200);
    }
}
