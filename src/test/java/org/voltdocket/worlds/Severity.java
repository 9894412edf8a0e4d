package org.voltdocket.worlds;

/** How strong a fault is; each takes a third of its range. */
public enum Severity {
    MILD,
    MODERATE,
    SEVERE;

    /** The severity of a strength from 0 to 1. */
    static Severity of(double strength) {
        return strength < 1 / 3.0 ? MILD : strength < 2 / 3.0 ? MODERATE : SEVERE;
    }
}
