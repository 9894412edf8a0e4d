package org.voltdocket.demo.model;

/** Current of the starter: an inrush of two to three times the plateau, then compression ripple until it fires. */
final class Starter {

    /** Least resistance of starter and its cable, Ω: a weak battery cannot drive the full inrush. */
    private static final double STALLED_OHM = 0.011;

    private final double plateauA;
    private final double inrush;
    private final double rippleHz;
    private double engagedS = -1;
    private double forS;

    Starter(ModelSettings setup, SeededRandom chance) {
        double cold = 1 + 0.012 * Math.max(-10, 20 - setup.temperatureC);
        this.plateauA = setup.starterA * cold;
        this.inrush = chance.between(1.4, 2.1);
        this.rippleHz = chance.between(7, 12);
    }

    /** Engages at a moment for so long, s. */
    void engage(double t, double forS) {
        this.engagedS = t;
        this.forS = forS;
    }

    boolean turning(double t) {
        return engagedS >= 0 && t >= engagedS && t < engagedS + forS;
    }

    /** Whether it has turned and is done. */
    boolean done(double t) {
        return engagedS >= 0 && t >= engagedS + forS;
    }

    /** Current at this moment, A, with the battery's inner voltage and resistance. */
    double currentA(double t, double emf, double ohm) {
        double since = t - engagedS;
        double wanted = plateauA
                * (1 + inrush * StrictMath.exp(-since / 0.06))
                * (1 + 0.16 * StrictMath.sin(2 * Math.PI * rippleHz * since))
                * (1 - 0.12 * since / forS);
        return Math.min(wanted, emf / (ohm + STALLED_OHM));
    }
}
