package org.voltdocket.demo.model;

/** The vehicle's battery sensor: reported current, voltage and charge, with errors and resolution. */
final class BatterySensor {

    private final ModelSettings setup;
    private final SeededRandom chance;
    private double currentA;
    private double smoothA;
    private double voltageV;
    private double pct;

    BatterySensor(ModelSettings setup, SeededRandom chance, double voltageV) {
        this.setup = setup;
        this.chance = chance;
        this.voltageV = voltageV + setup.sensorOffsetV;
        this.pct = setup.believedPct;
    }

    /** Takes the truth of one step. */
    void take(double trueA, double trueV, double dt) {
        double said = trueA * setup.sensorGain + setup.sensorOffsetA + chance.normal(setup.sensorNoiseA);
        currentA += (said - currentA) * Math.min(1, dt / 0.15);
        smoothA += (currentA - smoothA) * Math.min(1, dt / 3);
        voltageV += (trueV + setup.sensorOffsetV - voltageV) * Math.min(1, dt / 0.25);
        pct = Math.max(0, Math.min(100, pct + 100 * said * dt / 3600 / setup.capacityAh));
    }

    double smoothA() {
        return smoothA;
    }

    double chargePct() {
        return pct;
    }

    /** As sent, A. */
    double sentA() {
        return step(currentA, setup.sensorStepA);
    }

    /** As sent, V. */
    double sentV() {
        return ObdII.MODULE_VOLTAGE.asRead(step(voltageV, setup.sensorStepV));
    }

    /** As sent, %. */
    double sentPct() {
        return step(pct, setup.sensorStepV > 0.02 ? 1 : 0.5);
    }

    static double step(double value, double size) {
        return size > 0 ? Math.round(value / size) * size : value;
    }
}
