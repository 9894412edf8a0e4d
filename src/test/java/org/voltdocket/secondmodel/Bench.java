package org.voltdocket.secondmodel;

import org.voltdocket.diagnosis.Regime;

/** Discharges at a constant current from full charge to 10.50 V, as IEC 60095-1 has them at C/20 (from memory). */
final class Bench {

    /** What a battery holds against what it gives at C/20: the acid between the plates is not all used (ours). */
    private static final double HELD_PER_RATED = 1.08;

    private static final double END_V = 10.50;
    private static final double STEP_S = 2;
    private static final double LONGEST_S = 40 * 3600;

    private Bench() {}

    /**
     * @param battery as it is built; its charge does not matter
     * @param amperes drawn, A, positive
     */
    static Trace discharge(AcidBattery battery, double amperes, double celsius) {
        AcidBattery full = battery.holding(HELD_PER_RATED).rested(1, celsius);
        Trace trace = new Trace();
        for (double t = 0; t < LONGEST_S; t += STEP_S) {
            double volts = full.terminal(-amperes);
            trace.add(
                    Regime.DISCHARGING,
                    t,
                    volts,
                    -amperes,
                    volts,
                    -amperes,
                    full.charge(),
                    0,
                    0,
                    celsius,
                    full.charge());
            if (volts < END_V) {
                break;
            }
            full.step(-amperes, STEP_S);
        }
        return trace;
    }
}
