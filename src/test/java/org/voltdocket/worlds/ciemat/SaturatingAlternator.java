package org.voltdocket.worlds.ciemat;

import org.voltdocket.worlds.Alternator;

/** An alternator whose output saturates as tanh of the engine speed (ours; the shape is common practice). */
record SaturatingAlternator(double ratedA, double risesAPerS, double rippleV) implements Alternator {

    @Override
    public double most(double rpm) {
        return rpm < 500 ? 0 : ratedA * StrictMath.tanh((rpm - 250) / 800);
    }
}
