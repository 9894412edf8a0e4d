package org.voltdocket.secondmodel;

import java.util.Random;

/** Consumers as random telegraph processes. Currents in A at 13 V. */
final class Loads {

    private final Random chance;
    private final double base;
    private final double[] amps;
    private final double[] onPerS;
    private final double[] offPerS;
    private final boolean[] on;
    private final double awake;
    private final double asleep;

    /** Index of headlamps, wipers and rear-window heating: a managed source leaves its rest for them. */
    private static final int HEAVY = 3;

    /**
     * @param base engine, fuel pump and control units while the engine runs, A
     * @param heaviness 0 (summer noon) to 1 (winter night)
     * @param asleep current of the sleeping vehicle, A
     */
    Loads(Random chance, double base, double heaviness, double asleep) {
        this.chance = chance;
        this.base = base;
        this.asleep = asleep;
        this.awake = 3 + 5 * chance.nextDouble();
        this.amps = new double[] {11, 6, 17, 4 + 12 * chance.nextDouble(), 8, 4, 22};
        double h = heaviness;
        this.onPerS = new double[] {h / 100, h / 150, h / 200, 0.01, h / 200, 0.03, 0.002};
        this.offPerS = new double[] {(1.02 - h) / 100, 1 / 60.0, 1 / 300.0, 0.004, 1 / 400.0, 0.15, 1 / 25.0};
        this.on = new boolean[amps.length];
        for (int i = 0; i < on.length; i++) {
            on[i] = chance.nextDouble() < onPerS[i] / (onPerS[i] + offPerS[i]);
        }
    }

    boolean heavy() {
        for (int i = 0; i < HEAVY; i++) {
            if (on[i]) {
                return true;
            }
        }
        return false;
    }

    /** Current drawn during the next {@code dt} s, A. */
    double draw(DriveCycle.Phase phase, boolean engine, double dt) {
        if (phase == DriveCycle.Phase.ASLEEP) {
            return asleep;
        }
        if (!engine) {
            return phase == DriveCycle.Phase.CRANK
                    ? 5
                    : phase == DriveCycle.Phase.AWAKE ? awake : awake + running(dt) / 2;
        }
        return base + running(dt);
    }

    private double running(double dt) {
        double sum = 0;
        for (int i = 0; i < amps.length; i++) {
            if (chance.nextDouble() < dt * (on[i] ? offPerS[i] : onPerS[i])) {
                on[i] = !on[i];
            }
            sum += on[i] ? amps[i] : 0;
        }
        return sum;
    }
}
