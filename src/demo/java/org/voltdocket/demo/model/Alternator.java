package org.voltdocket.demo.model;

import org.voltdocket.diagnosis.Chemistry;

/** The charging source: the current it can deliver at a speed, and its response to a commanded voltage. */
final class Alternator {

    private final ModelSettings setup;
    private final SeededRandom chance;
    private double slipUntilS;
    private double nextSlipS;

    Alternator(ModelSettings setup, SeededRandom chance) {
        this.setup = setup;
        this.chance = chance;
        this.nextSlipS = chance.between(100, 260);
    }

    /** Most current at an engine speed, A: about 40 % of nominal at idle, nominal above some 4000 1/min. */
    double capability(double rpm, double t) {
        if (rpm < 500) {
            return 0;
        }
        double full = setup.alternatorA * (0.35 + 0.65 * (1 - StrictMath.exp(-(rpm - 700) / 1200)));
        return switch (setup.sourceFault) {
            case DEAD -> 0;
            case WEAK -> full * setup.sourceLevel;
            case DIODE -> full * 0.6;
            case SLIPPING -> slips(t) ? full * 0.06 : full;
            default -> full;
        };
    }

    /** Voltage it holds at its own terminals when asked for one, V. */
    double held(double wantedV) {
        return setup.sourceFault == ModelSettings.SourceFault.OVER ? setup.sourceLevel : wantedV;
    }

    /** What a conventional regulator holds, V: about −10 mV/K at the regulator. */
    double conventional(double regulatorC) {
        double least = setup.chemistry == Chemistry.GEL ? 13.5 : 13.2;
        return Math.max(least, Math.min(15.0, setup.regulatedV - 0.009 * (regulatorC - 25)));
    }

    /** Half of the peak-to-peak ripple at the posts, V. */
    double ripple(double outputA) {
        double share = outputA / setup.alternatorA;
        return setup.sourceFault == ModelSettings.SourceFault.DIODE ? 0.18 + 0.45 * share : 0.008 + 0.035 * share;
    }

    private boolean slips(double t) {
        if (t > nextSlipS) {
            slipUntilS = t + chance.between(25, 150);
            nextSlipS = slipUntilS + chance.between(20, 120);
        }
        return t < slipUntilS;
    }
}
