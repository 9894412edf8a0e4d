package org.voltdocket.worlds;

/** A charging source. */
public interface Alternator {

    /** Most it can give at this engine speed, A. */
    double most(double rpm);

    /** How fast its current rises at most, A/s; it falls at once. */
    double risesAPerS();

    /** Ripple of a sound one, V peak to peak. */
    double rippleV();
}
