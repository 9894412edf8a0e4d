package org.voltdocket.worlds;

/** A charging source. */
public interface Alternator {

    /** Most it can give at this engine speed, A. */
    double most(double rpm);

    /** Time constant with which its current follows, s. */
    double lagS();

    /** Ripple of a sound one, V peak to peak. */
    double rippleV();
}
